// SPDX-License-Identifier: Apache-2.0
// Mesh lines under the tip of a gauge pass through every part boundary, however close two of them lie.
#include "geometry/plug_mesh.h"
#include "solver/mesh/tip_mesh.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <limits>

using namespace solemech;

namespace
{
constexpr double radius = 42e-3; // of the plug [m]

/// A core in a ring over an air unit over a base.
geometry::PlugOutline stack(double core, double unit, double film)
{
  geometry::PlugOutline outline;
  outline.part_names = {"core", "ring", "film", "base"};
  outline.radius = radius;
  outline.strips = {
    {.thickness = 4e-3, .zones = {{radius, 3}}, .chamber = {}},
    {.thickness = 8e-3, .zones = {{radius, 1}}, .chamber = geometry::AirUnitOutline{unit, film, 2}},
    {.thickness = 5e-3, .zones = {{core, 0}, {radius, 1}}, .chamber = {}}};
  outline.tup_contact_radius = 1e-3;
  return outline;
}

double smallest_cell(const std::vector<double> &lines)
{
  double smallest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < lines.size(); ++i)
    smallest = std::min(smallest, lines[i] - lines[i - 1]);
  return smallest;
}

double greatest_contrast(const std::vector<double> &lines)
{
  double greatest = 1;
  for (std::size_t i = 2; i < lines.size(); ++i)
  {
    const double ratio = (lines[i] - lines[i - 1]) / (lines[i - 1] - lines[i - 2]);
    greatest = std::max({greatest, ratio, 1 / ratio});
  }
  return greatest;
}
} // namespace

TEST_CASE("lines under a tip keep close radii apart", "[tip mesh]")
{
  const double film = GENERATE(0.3e-3, 0.6e-3, 1.2e-3), unit = GENERATE(25e-3, 31e-3, radius);
  // The core ends far from the film, on either face of it, a hundredth of a millimetre beside it, and within
  // it.
  for (const double core : {12e-3, unit - film, unit - film + 1e-5, unit - film - 1e-5, unit - 0.5 * film})
    for (const auto &gauge : materials::gauges)
      for (const int n_cells : {3, 5})
      {
        INFO("film " << film << " unit " << unit << " core " << core << " cells " << n_cells);
        const auto outline = stack(core, unit, film);
        const auto lines = solver::lines_for_tip(outline, gauge.tip, n_cells);
        CHECK_NOTHROW(geometry::make_plug_mesh(outline, lines));
        CHECK(greatest_contrast(lines.r) <= 4 * (1 + 1e-9)); // what the grading allows
        // No cell is smaller than the smallest distance that the drawing or the tip asks for.
        const double corner = gauge.tip.is_ball() ? 0.6 * gauge.tip.nose_radius : gauge.tip.cone_start();
        const auto   radii = geometry::part_radii(outline);
        CHECK(smallest_cell(lines.r) >= 0.45 * std::min(corner / n_cells, smallest_cell(radii)));
      }
}

TEST_CASE("cells of film under a tip keep their aspect ratio", "[tip mesh]")
{
  const double film = 0.4e-3;
  const auto   mesh = geometry::make_plug_mesh(
      stack(12e-3, 31e-3, film),
      solver::lines_for_tip(stack(12e-3, 31e-3, film), materials::shore_a_gauge.tip, 3));
  for (const auto &cell : mesh.cells)
    if (mesh.part_names[cell.part] == "film")
    {
      const auto  &low = mesh.vertices[cell.vertices[0]], &high = mesh.vertices[cell.vertices[3]];
      const double width = high[0] - low[0], tall = high[1] - low[1];
      CHECK(width <= 8 * tall * (1 + 1e-9));
      // beside the gas stands the side wall
      if (low[0] >= 31e-3 - film - 1e-9)
        CHECK(tall <= 8 * width * (1 + 1e-9));
    }
}
