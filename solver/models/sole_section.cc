// SPDX-License-Identifier: Apache-2.0
#include "solver/models/sole_section.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
/// Bending stiffness D11 of plies about the middle of them all, per width, over t^3/12: the modulus of an
/// even plate (classical laminate theory: Jones, Mechanics of Composite Materials, ch. 4, from memory) [Pa].
double bending_modulus(const std::vector<materials::Ply> &plies)
{
  double whole = 0, sum = 0;
  for (const auto &ply : plies)
    whole += ply.thickness;
  double lower = -0.5 * whole;
  for (const auto &ply : plies)
  {
    const double q = 1 - ply.poisson_ratio * ply.poisson_ratio * ply.modulus_across / ply.modulus_along;
    const double q11 = ply.modulus_along / q, q22 = ply.modulus_across / q,
                 q12 = ply.poisson_ratio * ply.modulus_across / q;
    const double c = std::cos(ply.angle) * std::cos(ply.angle), s = 1 - c;
    const double along = q11 * c * c + 2 * (q12 + 2 * ply.shear_modulus) * s * c + q22 * s * s;
    const double upper = lower + ply.thickness;
    sum += along * (std::pow(upper, 3) - std::pow(lower, 3)) / 3;
    lower = upper;
  }
  return 12 * sum / std::pow(whole, 3);
}

/// The isotropic plate of this modulus of bending where it cannot contract across.
materials::Material with_bending_modulus(materials::Material material, double modulus, double poisson_ratio)
{
  const auto *data = std::get_if<materials::PlateData>(&material.data);
  material.data = materials::PlateData{modulus * (1 - poisson_ratio * poisson_ratio), poisson_ratio,
                                       data ? data->relaxing : std::vector<materials::RelaxingTerm>{}};
  return material;
}

/// Share of a layer's width at x that pockets take out of its height.
double hollow(const geometry::SoleBody &body, std::size_t layer, double x)
{
  constexpr int n = 200;
  const auto    span = body.outline().across(x);
  double        share = 0;
  for (const auto &pocket : body.shape().pockets)
    if (pocket.layer == layer)
    {
      int inside = 0;
      for (int i = 0; i < n; ++i)
        inside += covers(pocket.plan, {x, span.low + span.width() * (i + 0.5) / n});
      share += inside * (1 - (pocket.floor + pocket.roof) / body.thickness(layer, x)) / n;
    }
  return std::clamp(share, 0.0, 0.9);
}

/// Ends of a section, short of the round ends of the sole, over its length.
constexpr double end_share = 0.01;

/// Gives each cell to the layer it lies in, as wide as that is there, and the rest to the host of the layer.
void fill(const Sole &sole, const geometry::SoleBody &body, const std::vector<double> &lines,
          LongSection &section)
{
  for (const auto &layer : sole.layers)
    section.parts.push_back({layer.name, material_in_section(layer), {}, {}});
  const auto give = [&](std::size_t layer, std::size_t cell, double width) {
    auto &part = section.parts[layer];
    if (width > 1e-6 * body.length())
      part.cells.push_back(cell), part.widths.push_back(width);
  };
  for (std::size_t cell = 0; cell < section.mesh.cells.size(); ++cell)
  {
    const auto       &drawn = section.mesh.cells[cell];
    const std::size_t layer = sole.layers.size() - 1 - drawn.strip;
    const double      x = 0.5 * (lines[drawn.column] + lines[drawn.column + 1]);
    const double      whole = body.outline().across(x).width();
    double            own = 0;
    for (const auto &piece : body.region(layer).pieces(x))
      own += std::max(0.0, piece.width());
    const double full = 1 - hollow(body, layer, x);
    give(layer, cell, std::min(own, whole) * full);
    give(body.host(layer), cell, (whole - own) * full);
  }
}
} // namespace

materials::Material material_in_section(const SoleLayer &layer)
{
  if (!layer.plies.empty())
    return with_bending_modulus(layer.material, bending_modulus(layer.plies), 0.3);
  if (layer.flexural)
  {
    const auto  &f = *layer.flexural;
    const double held = 1 - f.poisson_ratio * f.poisson_ratio * f.modulus_across / f.modulus_along;
    return with_bending_modulus(layer.material, f.modulus_along / held, f.poisson_ratio);
  }
  return layer.material;
}

LongSection long_section(const Sole &sole, const geometry::SoleBody &body, const geometry::SoleSizes &sizes,
                         const std::vector<double> &stops)
{
  std::vector<std::string> names;
  for (const auto &layer : sole.layers)
    names.push_back(layer.name);
  LongSection section{geometry::make_sole_section(body, sizes, names, end_share * body.length(), stops), {}};
  std::vector<double> lines; // the lower face keeps its places along the foot
  for (const auto &cell : section.mesh.cells)
    if (cell.row == 0)
    {
      if (lines.empty())
        lines.push_back(section.mesh.vertices[cell.vertices[0]][0]);
      lines.push_back(section.mesh.vertices[cell.vertices[1]][0]);
    }
  fill(sole, body, lines, section);
  return section;
}
} // namespace solemech::solver
