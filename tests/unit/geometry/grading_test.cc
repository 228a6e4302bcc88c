// SPDX-License-Identifier: Apache-2.0
// Mesh lines: counts, growth, order, aspect of thin layers.
#include "geometry/errors.h"
#include "geometry/grading.h"
#include "tests/support/catch.h"
#include "tests/unit/geometry/sample_outlines.h"

#include <algorithm>
#include <cmath>

using namespace solemech;
using geometry::GridLines;
using geometry::MeshSize;

namespace
{
double greatest_growth(const std::vector<double> &lines)
{
  double growth = 1;
  for (std::size_t i = 2; i < lines.size(); ++i)
  {
    const double ratio = (lines[i] - lines[i - 1]) / (lines[i - 1] - lines[i - 2]);
    growth = std::max({growth, ratio, 1 / ratio});
  }
  return growth;
}

std::pair<std::size_t, std::size_t> n_cells(const GridLines &lines)
{
  return {lines.r.size() - 1, lines.z.size() - 1};
}
} // namespace

TEST_CASE("Cell counts on the foam cylinder follow the level")
{
  // wished counts: 8 x 5, 12 x 8 and 20 x 12, the last one within a row
  const auto lines = [](double level) {
    return geometry::graded_lines(tests::foam_cylinder(), MeshSize(level));
  };
  CHECK(n_cells(lines(1)) == std::pair<std::size_t, std::size_t>{8, 5});
  CHECK(n_cells(lines(1.5)) == std::pair<std::size_t, std::size_t>{12, 8});
  CHECK(n_cells(lines(2.5)) == std::pair<std::size_t, std::size_t>{20, 13});
  CHECK(n_cells(lines(4)).first == 32);
}

TEST_CASE("Lines are graded smoothly and finest under the rim and at the top")
{
  for (const double level : {1.0, 1.3, 1.5, 2.0, 2.5, 4.0, 8.0})
  {
    INFO("level " << level);
    const GridLines lines = geometry::graded_lines(tests::foam_cylinder(), MeshSize(level));
    CHECK(greatest_growth(lines.r) <= 1.51); // the wished 1.5, and rounding of counts
    CHECK(greatest_growth(lines.z) <= 1.51);
    // the smallest column lies between 7 mm inside and 1 mm outside the rim
    std::size_t smallest = 0;
    for (std::size_t i = 0; i + 1 < lines.r.size(); ++i)
      if (lines.r[i + 1] - lines.r[i] < lines.r[smallest + 1] - lines.r[smallest] - 1e-9)
        smallest = i;
    CHECK(lines.r[smallest] > 15e-3);
    CHECK(lines.r[smallest + 1] < 24e-3);
    for (std::size_t j = 2; j < lines.z.size(); ++j)
      CHECK(lines.z[j] - lines.z[j - 1] <= lines.z[j - 1] - lines.z[j - 2]);
  }
}

TEST_CASE("A striker that covers the plug gets even lines")
{
  for (const double radius : {40e-3, 60e-3, double(INFINITY)})
  {
    auto outline = tests::foam_cylinder();
    outline.tup_contact_radius = radius;
    const GridLines lines = geometry::graded_lines(outline, MeshSize(1));
    CHECK(greatest_growth(lines.r) <= 1 + 1e-9);
    CHECK(greatest_growth(lines.z) <= 1 + 1e-9);
    CHECK(lines.r.size() == 9);
  }
}

TEST_CASE("A ball refines its whole contact patch")
{
  auto outline = tests::foam_cylinder();
  outline.tup_contact_radius = 8e-3;
  outline.tup_edge_radius = 20e-3;
  const GridLines lines = geometry::graded_lines(outline, MeshSize(2));
  CHECK(lines.r[1] < 1e-3);
}

TEST_CASE("Lines pass through every part boundary, start at zero and increase")
{
  const auto has = [](const std::vector<double> &lines, double position) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](double line) { return std::abs(line - position) < 1e-12; });
  };
  for (const double level : {0.5, 1.0, 2.3, 5.0})
  {
    INFO("level " << level);
    const GridLines lines = geometry::graded_lines(tests::two_unit_plug(), MeshSize(level));
    for (const double r : {0.0, 20e-3, 30.4e-3, 31e-3, 39e-3, 40e-3, 42e-3})
      CHECK(has(lines.r, r));
    for (const double z : {0.0, 0.6e-3, 7.4e-3, 8e-3, 9e-3, 17e-3, 18e-3, 23e-3})
      CHECK(has(lines.z, z));
    CHECK(std::is_sorted(lines.r.begin(), lines.r.end(), std::less_equal<>()));
    CHECK(std::is_sorted(lines.z.begin(), lines.z.end(), std::less_equal<>()));
  }
}

TEST_CASE("Halving keeps the lines and doubles the intervals")
{
  const GridLines coarse = geometry::graded_lines(tests::heel_plug(), MeshSize(1));
  const GridLines fine = geometry::halved(coarse);
  REQUIRE(fine.r.size() == 2 * coarse.r.size() - 1);
  REQUIRE(fine.z.size() == 2 * coarse.z.size() - 1);
  for (std::size_t i = 0; i < coarse.z.size(); ++i)
    CHECK(fine.z[2 * i] == coarse.z[i]);
}

TEST_CASE("Unusable levels are refused")
{
  CHECK_THROWS_AS(MeshSize(0.4), geometry::InvalidGeometry);
  CHECK_THROWS_AS(MeshSize(33), geometry::InvalidGeometry);
  CHECK_THROWS_AS(MeshSize(std::nan("")), geometry::InvalidGeometry);
}
