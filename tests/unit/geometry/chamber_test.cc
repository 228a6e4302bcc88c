// SPDX-License-Identifier: Apache-2.0
// Chamber volume: bodies of known volume, derivatives against central differences, translation.
#include "geometry/chamber.h"
#include "tests/support/catch.h"

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

using namespace solemech::geometry;
using std::numbers::pi;

namespace
{
EdgeNodes random_edge(std::mt19937 &random)
{
  std::uniform_real_distribution<double> coordinate(0.2, 1.0);
  EdgeNodes                              nodes;
  for (auto &node : nodes)
    node = {coordinate(random), coordinate(random)};
  return nodes;
}

double &coordinate(EdgeNodes &nodes, unsigned i)
{
  return nodes[i / 2][i % 2];
}

// Right half of a circle round (0, 2), travelled upwards, in n quadratic edges with nodes on the circle.
std::vector<EdgeNodes> half_circle(double radius, unsigned n)
{
  const auto point = [&](double share) {
    const double angle = pi * (share - 0.5);
    return std::array<double, 2>{share > 0 && share < 1 ? radius * std::cos(angle) : 0.0,
                                 2 + radius * std::sin(angle)};
  };
  std::vector<EdgeNodes> edges;
  for (unsigned i = 0; i < n; ++i)
    edges.push_back({point(double(i) / n), point((i + 0.5) / n), point((i + 1.0) / n)});
  return edges;
}
} // namespace

TEST_CASE("A straight cylinder and a cone are exact")
{
  // the caps of a body standing on the axis have dz = 0
  const EdgeNodes wall{{{0.3, 0.1}, {0.3, 0.4}, {0.3, 0.7}}};
  CHECK(edge_volume(wall, Section::axisymmetric).volume == Approx(pi * 0.3 * 0.3 * 0.6).epsilon(1e-14));
  CHECK(edge_volume(wall, Section::plane_strain).volume == Approx(0.3 * 0.6).epsilon(1e-14));
  const EdgeNodes slant{{{0.3, 0.0}, {0.15, 0.2}, {0.0, 0.4}}};
  CHECK(edge_volume(slant, Section::axisymmetric).volume == Approx(pi * 0.3 * 0.3 * 0.4 / 3).epsilon(1e-14));
  CHECK(edge_volume(slant, Section::plane_strain).volume == Approx(0.3 * 0.4 / 2).epsilon(1e-14));
}

TEST_CASE("A paraboloid with curved edges is exact")
{
  // r = 1 - s^2, z = s over s in [-1, 1]: V = pi integral (1 - z^2)^2 dz = 16 pi/15, area 4/3 (calculus)
  const EdgeNodes dome{{{0, -1}, {1, 0}, {0, 1}}};
  CHECK(edge_volume(dome, Section::axisymmetric).volume == Approx(16 * pi / 15).epsilon(1e-14));
  CHECK(edge_volume(dome, Section::plane_strain).volume == Approx(4.0 / 3).epsilon(1e-14));
}

TEST_CASE("Sphere and circle are approached with the fourth order of quadratic edges")
{
  const double radius = 0.7, sphere = 4 * pi / 3 * std::pow(radius, 3), circle = pi / 2 * radius * radius;
  const auto   error = [&](unsigned n, Section section, double exact) {
    return std::abs(enclosed_volume(half_circle(radius, n), section) / exact - 1);
  };
  CHECK(error(16, Section::axisymmetric, sphere) < 1e-5);
  CHECK(error(16, Section::plane_strain, circle) < 1e-5);
  CHECK(std::log2(error(8, Section::axisymmetric, sphere) / error(16, Section::axisymmetric, sphere)) > 3.8);
  CHECK(std::log2(error(8, Section::plane_strain, circle) / error(16, Section::plane_strain, circle)) > 3.8);
}

TEST_CASE("Gradient and Hessian are the derivatives of the volume")
{
  // Central differences of a polynomial of degree 3 in the nodes: error h^2 relative, plus rounding 1e-16/h.
  const double h = 1e-5, tolerance = 1e-9;
  std::mt19937 random(7);
  for (const Section section : {Section::axisymmetric, Section::plane_strain})
    for (int trial = 0; trial < 20; ++trial)
    {
      const EdgeNodes  nodes = random_edge(random);
      const EdgeVolume here = edge_volume(nodes, section);
      for (unsigned i = 0; i < 6; ++i)
      {
        EdgeNodes up = nodes, down = nodes;
        coordinate(up, i) += h;
        coordinate(down, i) -= h;
        const EdgeVolume above = edge_volume(up, section), below = edge_volume(down, section);
        CHECK(here.gradient[i] ==
              Approx((above.volume - below.volume) / (2 * h)).epsilon(0).margin(tolerance));
        for (unsigned j = 0; j < 6; ++j)
        {
          CHECK(here.hessian[i][j] ==
                Approx((above.gradient[j] - below.gradient[j]) / (2 * h)).epsilon(0).margin(tolerance));
          CHECK(here.hessian[i][j] == here.hessian[j][i]);
        }
      }
    }
}

TEST_CASE("A shift changes nothing where it is a rigid motion")
{
  // along the axis always; sideways only for a closed line in plane strain
  auto       edges = half_circle(0.5, 6);
  const auto volume = enclosed_volume(edges, Section::axisymmetric);
  for (auto &edge : edges)
    for (auto &node : edge)
      node[1] += 0.37;
  CHECK(enclosed_volume(edges, Section::axisymmetric) == Approx(volume).epsilon(1e-13));

  std::vector<EdgeNodes> square{{{{0, 0}, {1, 0}, {2, 0}}},
                                {{{2, 0}, {2, 1}, {2, 2}}},
                                {{{2, 2}, {1, 2}, {0, 2}}},
                                {{{0, 2}, {0, 1}, {0, 0}}}};
  for (auto &edge : square)
    for (auto &node : edge)
      node[0] += 5.5;
  CHECK(enclosed_volume(square, Section::plane_strain) == Approx(4).epsilon(1e-13));

  // nodal loads of the closed line carry no net force in plane strain
  double across = 0, along = 0;
  for (const auto &edge : square)
  {
    const auto gradient = edge_volume(edge, Section::plane_strain).gradient;
    across += gradient[0] + gradient[2] + gradient[4];
    along += gradient[1] + gradient[3] + gradient[5];
  }
  CHECK(across == Approx(0).margin(1e-13));
  CHECK(along == Approx(0).margin(1e-13));
}
