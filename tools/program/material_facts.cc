// SPDX-License-Identifier: Apache-2.0
#include "tools/program/material_facts.h"

#include "materials/foam.h"
#include "materials/hardness.h"

#include <fmt/format.h>

namespace solemech::tools
{
using namespace materials;

namespace
{
constexpr double atmospheric_pressure = 101325; // [Pa]

SmallStrain slow_constants(const FoamData &data, const ThermalData &thermal)
{
  return make_foam(data, thermal, thermal.reference_temperature, atmospheric_pressure)
    .equilibrium_constants();
}

struct SlowModulus
{
  const ThermalData &thermal;
  double operator()(const FoamData &foam) const { return slow_constants(foam, thermal).youngs_modulus; }
  double operator()(const RubberData &rubber) const { return 6 * (rubber.c10 + rubber.c01); }
  double operator()(const PlateData &plate) const { return plate.youngs_modulus; }
};
} // namespace

double slow_modulus(const Material &material)
{
  return std::visit(SlowModulus{material.thermal}, material.data);
}

std::string hardness_text(const Material &material)
{
  if (!material.hardness.empty())
    return material.hardness;
  const auto *foam = std::get_if<FoamData>(&material.data);
  if (foam == nullptr)
    return "-";
  const SmallStrain slow = slow_constants(*foam, material.thermal);
  return fmt::format("{:.0f} AskerC",
                     half_space_reading(asker_c_gauge, slow.youngs_modulus, slow.poisson_ratio));
}
} // namespace solemech::tools
