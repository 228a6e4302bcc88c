// SPDX-License-Identifier: Apache-2.0
#include "solver/tip_mesh.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double growth = 1.3; // from cell to cell, away from the tip

/// Cells of the size `first` up to `even`, then growing to `last`; from zero.
std::vector<double> growing(double first, double even, double last)
{
  std::vector<double> lines{0};
  double              step = first;
  while (lines.back() + 1.5 * step < last)
  {
    lines.push_back(lines.back() + step);
    if (lines.back() >= even)
      step *= growth;
  }
  lines.push_back(last);
  return lines;
}
} // namespace

geometry::GridLines lines_for_tip(const geometry::PlugOutline &outline, const materials::IndenterTip &tip, int n_cells)
{
  const double        corner = tip.is_ball() ? 0.6 * tip.nose_radius : tip.cone_start();
  const double        cell = corner / n_cells, even = tip.is_ball() ? 2 * corner : 2 * tip.rod_radius;
  geometry::GridLines lines;
  lines.r = growing(cell, even, outline.radius + outline.wall_thickness);
  const auto meet = [](std::vector<double> &all, double wanted) {
    auto nearest = std::min_element(all.begin(), all.end(), [&](double a, double b) {
      return std::abs(a - wanted) < std::abs(b - wanted);
    });
    if (nearest == all.begin() || nearest + 1 == all.end())
    {
      if (std::abs(*nearest - wanted) > 1e-9 * all.back())
        all.push_back(wanted), std::sort(all.begin(), all.end());
    }
    else
      *nearest = wanted;
  };
  meet(lines.r, outline.radius);
  for (const auto &strip : outline.strips)
  {
    for (const auto &zone : strip.zones)
      meet(lines.r, zone.outer_radius);
    if (strip.chamber)
      for (const double radius : {strip.chamber->outer_radius, strip.chamber->outer_radius - strip.chamber->film_thickness})
        meet(lines.r, radius);
  }
  // From the top down, each strip with the cells that its depth asks for.
  const double        height = geometry::height(outline);
  std::vector<double> depth{0};
  double              step = cell;
  for (auto strip = outline.strips.rbegin(); strip != outline.strips.rend(); ++strip)
  {
    std::vector<double> cuts;
    if (strip->chamber)
      cuts = {strip->chamber->film_thickness, strip->thickness - strip->chamber->film_thickness};
    cuts.push_back(strip->thickness);
    double within = 0;
    for (const double cut : cuts)
    {
      const auto piece = growing(step, std::max(corner - depth.back(), 0.0), cut - within);
      const double start = depth.back();
      for (std::size_t i = 1; i < piece.size(); ++i)
        depth.push_back(start + piece[i]);
      step = std::max(step, piece.back() - piece[piece.size() - 2]);
      within = cut;
    }
  }
  for (auto d = depth.rbegin(); d != depth.rend(); ++d)
    lines.z.push_back(height - *d);
  lines.z.front() = 0;
  return lines;
}
} // namespace solemech::solver
