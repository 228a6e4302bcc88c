// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/tip_mesh.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace solemech::solver
{
namespace
{
constexpr double growth = 1.3;       // from cell to cell, away from the tip
constexpr double largest_aspect = 8; // of cells of film
constexpr double largest_contrast =
  4; // of neighbouring cells; parts that end close together ask for small ones

/// Halves cells that are larger than allowed.
void halve(std::vector<double> &lines, double largest)
{
  for (std::size_t i = 0; i + 1 < lines.size();)
    if (lines[i + 1] - lines[i] > largest)
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(i) + 1, 0.5 * (lines[i] + lines[i + 1]));
    else
      ++i;
}

/// Cells of the size `first` up to `even`, then growing to `last`, none larger than `largest`; from zero.
std::vector<double> growing(double first, double even, double last, double largest)
{
  std::vector<double> lines{0};
  double              step = std::min(first, largest);
  while (lines.back() + 1.5 * step < last)
  {
    lines.push_back(lines.back() + step);
    if (lines.back() >= even)
      step = std::min(growth * step, largest);
  }
  lines.push_back(last);
  halve(lines, largest);
  return lines;
}

/// Moves the nearest line onto each place; one that stands on another place already is left there, and a line
/// added.
void meet(std::vector<double> &lines, const std::vector<double> &places)
{
  const double        same = 1e-9 * lines.back();
  std::vector<double> met{lines.front(), lines.back()};
  for (const double place : places)
  {
    const auto nearest = std::min_element(lines.begin(), lines.end(), [&](double a, double b) {
      return std::abs(a - place) < std::abs(b - place);
    });
    if (std::find(met.begin(), met.end(), *nearest) == met.end())
      *nearest = place;
    else if (std::abs(*nearest - place) > same)
      lines.insert(std::upper_bound(lines.begin(), lines.end(), place), place);
    else
      continue;
    met.push_back(place);
  }
}

/// Cuts cells that are much larger than a neighbour. No piece is smaller than that neighbour.
void soften(std::vector<double> &lines)
{
  for (std::size_t i = 0; i + 1 < lines.size();)
  {
    constexpr double none = std::numeric_limits<double>::infinity();
    const double     cell = lines[i + 1] - lines[i];
    const double     before = i > 0 ? lines[i] - lines[i - 1] : none;
    const double     after = i + 2 < lines.size() ? lines[i + 2] - lines[i + 1] : none;
    if (cell <= largest_contrast * std::min(before, after))
    {
      ++i;
      continue;
    }
    const double cut = before < after ? lines[i] + 2 * before : lines[i + 1] - 2 * after;
    lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(i) + 1, cut);
    i -= i > 0;
  }
}

/// Thinnest film in the stack; infinity: none.
double thinnest_film(const geometry::PlugOutline &outline)
{
  double thinnest = std::numeric_limits<double>::infinity();
  for (const auto &strip : outline.strips)
    if (strip.chamber)
      thinnest = std::min(thinnest, strip.chamber->film_thickness);
  return thinnest;
}
} // namespace

geometry::GridLines lines_for_tip(const geometry::PlugOutline &outline, const materials::IndenterTip &tip,
                                  int n_cells)
{
  const double        corner = tip.is_ball() ? 0.6 * tip.nose_radius : tip.cone_start();
  const double        cell = corner / n_cells, even = tip.is_ball() ? 2 * corner : 2 * tip.rod_radius;
  geometry::GridLines lines;
  lines.r =
    growing(cell, even, outline.radius + outline.wall_thickness, largest_aspect * thinnest_film(outline));
  meet(lines.r, geometry::part_radii(outline));
  halve(lines.r, largest_aspect * thinnest_film(outline));
  soften(lines.r);
  // From the top down, each strip with the cells that its depth asks for.
  const double        height = geometry::height(outline);
  std::vector<double> depth{0};
  double              step = cell;
  for (auto strip = outline.strips.rbegin(); strip != outline.strips.rend(); ++strip)
  {
    constexpr double    any = std::numeric_limits<double>::infinity();
    std::vector<double> cuts;
    if (strip->chamber)
      cuts = {strip->chamber->film_thickness, strip->thickness - strip->chamber->film_thickness};
    cuts.push_back(strip->thickness);
    double within = 0;
    for (const double cut : cuts)
    {
      // between the faces of a unit stands the film of its side wall
      const bool   beside_gas = strip->chamber && within > 0 && cut < strip->thickness;
      const double tallest = beside_gas ? largest_aspect * strip->chamber->film_thickness : any;
      const auto   piece = growing(step, std::max(corner - depth.back(), 0.0), cut - within, tallest);
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
