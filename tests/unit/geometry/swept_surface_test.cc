// SPDX-License-Identifier: Apache-2.0
// Surfaces in space: a ball, a roller and a puck against closed forms, derivatives against differences.
#include "geometry/swept_surface.h"
#include "tests/support/catch.h"

#include <cmath>
#include <random>

using namespace solemech::geometry;

namespace
{
constexpr double size = 10e-3; ///< [m]

using Place = std::array<double, 3>;

Place moved(Place place, unsigned along, double way)
{
  place[along] += way;
  return place;
}
} // namespace

TEST_CASE("a ball and a roller are as far as their centre and their axis, less the radius")
{
  std::mt19937                           random(5);
  std::uniform_real_distribution<double> spread(-2 * size, 2 * size);
  for (int i = 0; i < 100; ++i)
  {
    const Place at{spread(random), spread(random), spread(random)};
    CHECK(surface_distance({Sphere(size)}, at).distance ==
          Approx(std::hypot(at[0], at[1], at[2] - size) - size).margin(1e-15));
    CHECK(surface_distance({Sphere(size), Sweep::along_y}, at).distance ==
          Approx(std::hypot(at[0], at[2] - size) - size).margin(1e-15));
  }
}

TEST_CASE("normals and curvatures in space are the derivatives of the distance")
{
  const double       h = 1e-4 * size;
  std::mt19937       random(7);
  const SweptSurface surfaces[] = {{Sphere(size)},
                                   {Sphere(size), Sweep::along_y},
                                   {FlatPuck(2 * size, 0.6 * size)},
                                   {FlatPuck(2 * size, 0.6 * size), Sweep::along_y},
                                   {Plane()}};
  for (const auto &surface : surfaces)
  {
    std::uniform_real_distribution<double> across(-2 * size, 2 * size), up(-0.2 * size, 0.2 * size);
    int                                    n_smooth = 0;
    for (int i = 0; i < 300; ++i)
    {
      const Place at{across(random), across(random), up(random)};
      const auto  here = surface_distance(surface, at);
      CHECK(std::hypot(here.normal[0], here.normal[1], here.normal[2]) == Approx(1).epsilon(1e-12));
      for (unsigned k = 0; k < 3; ++k)
      {
        const auto ahead = surface_distance(surface, moved(at, k, h)),
                   behind = surface_distance(surface, moved(at, k, -h));
        double jump = 0; // where an arc meets a straight line differences mean nothing
        for (unsigned l = 0; l < 3; ++l)
          jump = std::max(jump, std::abs(ahead.curvature[l][l] - behind.curvature[l][l]));
        if (jump * size > 0.02)
          continue;
        ++n_smooth;
        CHECK(here.normal[k] == Approx((ahead.distance - behind.distance) / (2 * h)).epsilon(0).margin(1e-6));
        for (unsigned l = 0; l < 3; ++l)
          CHECK(here.curvature[k][l] ==
                Approx((ahead.normal[l] - behind.normal[l]) / (2 * h)).epsilon(0).margin(1e-5 / size));
      }
    }
    CHECK(n_smooth > 100);
  }
}

TEST_CASE("on its axis a body of revolution curves the same way all round")
{
  const auto foot = surface_distance({Sphere(size)}, {0, 0, 0});
  CHECK(foot.normal[2] == Approx(-1));
  CHECK(foot.curvature[0][0] == Approx(1 / size));
  CHECK(foot.curvature[1][1] == Approx(1 / size));
  CHECK(foot.curvature[0][1] == Approx(0).margin(1e-12));
}
