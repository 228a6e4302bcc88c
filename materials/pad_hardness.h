// SPDX-License-Identifier: Apache-2.0
// What a gauge reads on a thick pad of a material some seconds after it was set on: the reading on a
// half-space (hardness.h) as stiff as the material is then under the tip. Its branches still hold: of a
// relaxing one exp(-t/time) is left, and a slipping one holds min(1, cap/strain). The strain is the
// representative one of an indentation, 0.2 a/R under a ball of radius R and contact radius a, 0.2 times the
// slope of a cone (D. Tabor, The Hardness of Metals, 1951, for metals; taken over). Stiffening under the tip
// is left out. A gauge pressed on in the model reads within two and a half points of it on every foam of the
// library (tests/unit/program/library_test.cc); without the branches it read up to 13 points more.
#pragma once

#include "materials/foam.h"
#include "materials/hardness.h"
#include "materials/material.h"

#include <algorithm>
#include <cmath>

namespace solemech::materials
{
/// Time from set on to reading that gauges are read at [s]; ISO 48-4 (from memory) asks for 3 s.
constexpr double pad_read_after = 3;

/// Young's modulus [Pa] and Poisson ratio of a slow, small test.
struct SlowStiffness
{
  double youngs_modulus = 0, poisson_ratio = 0;
};

inline SlowStiffness slow_stiffness(const Material &material)
{
  constexpr double atmospheric_pressure = 101325; // [Pa]
  if (const auto *foam = std::get_if<FoamData>(&material.data))
  {
    const auto slow =
      make_foam(*foam, material.thermal, material.thermal.reference_temperature, atmospheric_pressure)
        .equilibrium_constants();
    return {slow.youngs_modulus, slow.poisson_ratio};
  }
  if (const auto *rubber = std::get_if<RubberData>(&material.data))
    return {rubber->youngs_modulus(), 0.5};
  const auto &plate = std::get<PlateData>(material.data);
  return {plate.youngs_modulus, plate.poisson_ratio};
}

/// The same where a gauge has held the material at a strain [-] until it is read.
inline SlowStiffness held_stiffness(const Material &material, double strain)
{
  double     share = 1;
  const auto add_relaxing = [&](const auto &data) {
    for (const auto &branch : data.relaxing)
      share += branch.share * std::exp(-pad_read_after / branch.relaxation_time);
  };
  std::visit(add_relaxing, material.data);
  if (const auto *foam = std::get_if<FoamData>(&material.data))
  {
    for (const auto &branch : foam->slipping)
      share += branch.share * std::min(1.0, branch.cap / strain);
    auto held = material; // the gas in the cells is not held by branches
    for (auto &term : std::get<FoamData>(held.data).network)
      term.shear_modulus *= share;
    return slow_stiffness(held);
  }
  const auto slow = slow_stiffness(material);
  return {share * slow.youngs_modulus, slow.poisson_ratio};
}

/// Representative strain under a tip that is in by `depth` [m].
inline double strain_under(const IndenterTip &tip, double depth)
{
  constexpr double tabor = 0.2;
  return tabor * (tip.is_ball() ? half_space_contact(tip, depth).radius / tip.nose_radius : tip.slope());
}

/// Points of a gauge; 0 when the tip goes in all the way.
inline double pad_reading(const Gauge &gauge, const Material &material)
{
  const auto too_stiff = [&](double reading) {
    const auto held = held_stiffness(material, strain_under(gauge.tip, gauge.depth(reading)));
    return modulus_from_reading(gauge, reading, held.poisson_ratio) - held.youngs_modulus;
  };
  constexpr double ends = 1e-6;
  return too_stiff(ends) > 0 ? 0 : numerics::rising_root(too_stiff, ends, 100 - ends);
}
} // namespace solemech::materials
