// SPDX-License-Identifier: Apache-2.0
// Sections of even layers for whole problems, from the ground up, of elastic materials.
#pragma once

#include "solver/models/section_model.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace solemech::tests
{
/// A place along the section and the cell size wanted there [m].
using SizeAt = std::pair<double, double>;

/// Lines from the first place to the last one through all of them; between two places sizes lie on the
/// straight line between theirs, divided by the level.
inline std::vector<double> lines_through(const std::vector<SizeAt> &sizes, double level)
{
  std::vector<double> lines{sizes.front().first};
  for (std::size_t i = 1; i < sizes.size(); ++i)
  {
    const auto [a, size_a] = sizes[i - 1];
    const auto [b, size_b] = sizes[i];
    const double ratio = size_b / size_a;
    const bool   even = std::abs(ratio - 1) < 1e-6;
    // Cells between a and b: the integral of 1/size; equal shares of it lie a geometric series apart.
    const double n = (b - a) / size_a * (even ? 1.0 : std::log(ratio) / (ratio - 1));
    const auto   n_cells = static_cast<unsigned>(std::max(1.0, std::round(level * n)));
    for (unsigned k = 1; k < n_cells; ++k)
    {
      const double share = static_cast<double>(k) / n_cells;
      lines.push_back(a + (b - a) * (even ? share : (std::pow(ratio, share) - 1) / (ratio - 1)));
    }
    lines.push_back(b);
  }
  return lines;
}

struct EvenLayer
{
  std::string         name;
  materials::Material material;
  double              thickness; ///< [m]
  unsigned            n_cells;   ///< through it at level 1
};

/// @param layers  from the ground up
/// @param width   of all of them [m]
inline solver::LongSection section_block(const std::vector<double>    &lines,
                                         const std::vector<EvenLayer> &layers, double width, double level)
{
  const double          first = lines.front();
  geometry::PlugOutline outline;
  geometry::GridLines   grid{{}, {0}};
  outline.radius = outline.tup_contact_radius = lines.back() - first;
  for (const double x : lines)
    grid.r.push_back(x - first);
  for (const auto &layer : layers)
  {
    const int      part = static_cast<int>(outline.part_names.size());
    const unsigned n = std::max(1.0, std::round(level * layer.n_cells));
    const double   z = grid.z.back();
    outline.part_names.push_back(layer.name);
    outline.strips.push_back(
      {.thickness = layer.thickness, .zones = {{outline.radius, part}}, .chamber = {}});
    for (unsigned k = 1; k <= n; ++k)
      grid.z.push_back(z + layer.thickness * k / n);
  }
  solver::LongSection section{geometry::make_plug_mesh(outline, grid), {}};
  for (auto &vertex : section.mesh.vertices)
    vertex[0] += first;
  for (const auto &layer : layers)
    section.parts.push_back({layer.name, layer.material, {}, {}});
  for (std::size_t cell = 0; cell < section.mesh.cells.size(); ++cell)
  {
    auto &part = section.parts[section.mesh.cells[cell].part];
    part.cells.push_back(cell), part.widths.push_back(width);
  }
  return section;
}

/// One Ogden-Hill term without gas.
inline materials::Material elastic_foam(double shear_modulus, double exponent, double volumetric_exponent)
{
  materials::FoamData data;
  data.network = {{shear_modulus, exponent, volumetric_exponent}};
  materials::Material material;
  material.density = 200, material.data = std::move(data);
  return material;
}

inline materials::Material elastic_plate(double youngs_modulus, double poisson_ratio)
{
  materials::Material material;
  material.density = 1500, material.data = materials::PlateData{youngs_modulus, poisson_ratio, {}};
  return material;
}

/// Neo-Hookean.
inline materials::Material elastic_rubber(double shear_modulus, double bulk_modulus)
{
  materials::RubberData data;
  data.c10 = shear_modulus / 2, data.bulk_modulus = bulk_modulus;
  materials::Material material;
  material.density = 1100, material.data = std::move(data);
  return material;
}
} // namespace solemech::tests
