// SPDX-License-Identifier: Apache-2.0
// Rigid surfaces: distance against brute-force sampling of the outline, derivatives against differences,
// closed forms on the axis and the walls.
#include "geometry/errors.h"
#include "geometry/rigid_surface.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

using namespace solemech::geometry;
using std::numbers::pi;

namespace
{
struct Sample
{
  const char  *name;
  RigidSurface surface;
  double       size;      // of the region to probe [m]
  double       smoothest; // smallest radius of curvature [m]
};

std::vector<Sample> samples()
{
  return {{"plane", Plane(), 10e-3, 10e-3},
          {"puck", FlatPuck(22.5e-3, 2e-3), 30e-3, 2e-3},
          {"puck, all edge", FlatPuck(8e-3, 8e-3), 20e-3, 8e-3},
          {"ball", Sphere(8e-3), 16e-3, 8e-3},
          {"rod", SphericalEndedRod(22.5e-3, 37.5e-3, 3e-3), 30e-3, 3e-3},
          {"rod, half ball", SphericalEndedRod(10e-3, 10e-3, 2e-3), 20e-3, 2e-3},
          {"cone", ConeFrustum(4e-3, 0.6, 0.5e-3, 12e-3), 25e-3, 0.5e-3},
          {"needle", ConeFrustum(0, 0.3, 0.2e-3, 5e-3), 20e-3, 0.2e-3},
          {"court", SinusoidalCourt(1e-3, 12e-3), 30e-3, 1e-3}};
}

// Distance to a polyline mirrored on the axis, segment by segment.
double distance_to_polyline(const Polyline &line, double r, double z)
{
  double nearest = INFINITY;
  for (const double side : {1.0, -1.0})
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
    {
      const double ax = side * line[i][0], az = line[i][1];
      const double bx = side * line[i + 1][0] - ax, bz = line[i + 1][1] - az;
      const double t = std::clamp(((r - ax) * bx + (z - az) * bz) / (bx * bx + bz * bz + 1e-300), 0.0, 1.0);
      nearest = std::min(nearest, std::hypot(r - ax - t * bx, z - az - t * bz));
    }
  return nearest;
}
} // namespace

TEST_CASE("Distance equals brute-force distance to the outline")
{
  // 8000 points: arcs are off by less than radius (pi/16000)^2/2, the court's waves of 3.6 mm crest radius by
  // (15 um)^2/(8 * 3.6 mm), both below 1e-8 m
  std::mt19937 random(11);
  for (const auto &[name, surface, size, smoothest] : samples())
  {
    INFO(name);
    const Polyline                         line = outline(surface, 8000, 4 * size);
    std::uniform_real_distribution<double> across(-size, size), along(-size, size);
    for (int i = 0; i < 300; ++i)
    {
      const double r = across(random), z = along(random);
      INFO("at " << r << ", " << z);
      CHECK(std::abs(surface_distance(surface, r, z).distance) ==
            Approx(distance_to_polyline(line, r, z)).epsilon(0).margin(2e-8));
    }
  }
}

TEST_CASE("Normals have unit length and are the gradient; curvature is the second derivative")
{
  // Close to the surface, where contact works: within half the smallest radius of curvature.
  std::mt19937 random(13);
  for (const auto &[name, surface, size, smoothest] : samples())
  {
    INFO(name);
    const double                           h = 1e-4 * smoothest;
    std::uniform_real_distribution<double> across(-size, size), along(-size, size);
    int                                    n_smooth = 0;
    for (int i = 0; i < 20000 && n_smooth < 200; ++i)
    {
      const double          r = across(random), z = along(random);
      const SurfaceDistance here = surface_distance(surface, r, z);
      CHECK(std::hypot(here.normal[0], here.normal[1]) == Approx(1).epsilon(1e-12));
      if (std::abs(here.distance) > smoothest / 2)
        continue;
      const SurfaceDistance east = surface_distance(surface, r + h, z),
                            west = surface_distance(surface, r - h, z),
                            up = surface_distance(surface, r, z + h),
                            down = surface_distance(surface, r, z - h);
      // curvature jumps where an arc meets a straight line: differences across the seam mean nothing
      const auto jump = [&](const SurfaceDistance &there) {
        double difference = 0;
        for (unsigned k = 0; k < 3; ++k)
          difference = std::max(difference, std::abs(there.curvature[k] - here.curvature[k]));
        return difference > 0.02 / smoothest;
      };
      if (jump(east) || jump(west) || jump(up) || jump(down))
        continue;
      ++n_smooth;
      INFO("at " << r << ", " << z);
      const double first = 1e-6, second = 1e-5 / smoothest; // h^2 and rounding over h
      CHECK(here.normal[0] == Approx((east.distance - west.distance) / (2 * h)).epsilon(0).margin(first));
      CHECK(here.normal[1] == Approx((up.distance - down.distance) / (2 * h)).epsilon(0).margin(first));
      CHECK(here.curvature[0] ==
            Approx((east.normal[0] - west.normal[0]) / (2 * h)).epsilon(0).margin(second));
      CHECK(here.curvature[1] == Approx((up.normal[1] - down.normal[1]) / (2 * h)).epsilon(0).margin(second));
      CHECK(here.curvature[2] == Approx((up.normal[0] - down.normal[0]) / (2 * h)).epsilon(0).margin(second));
    }
    CHECK(n_smooth > 20);
  }
}

TEST_CASE("The lowest point is the origin and the body lies above it")
{
  for (const auto &[name, surface, size, smoothest] : samples())
  {
    INFO(name);
    CHECK(surface_distance(surface, 0, 0).distance == Approx(0).margin(1e-15));
    CHECK(surface_distance(surface, 0, -1e-3).distance == Approx(1e-3).epsilon(1e-12));
    CHECK(surface_distance(surface, 0, 0.05 * smoothest).distance < 0);
    CHECK(surface_distance(surface, 0, 0).normal[1] == Approx(-1).epsilon(1e-12));
    const auto start = outline(surface, 20, size).front();
    CHECK(std::hypot(start[0], start[1]) == Approx(0).margin(1e-15));
  }
}

TEST_CASE("Side walls count")
{
  const SurfaceDistance puck = surface_distance(FlatPuck(22.5e-3, 2e-3), 22.4e-3, 6e-3);
  CHECK(puck.distance == Approx(-0.1e-3).epsilon(1e-9));
  CHECK(puck.normal == std::array<double, 2>{1, 0});
  const SurfaceDistance rod = surface_distance(SphericalEndedRod(10e-3, 10e-3, 2e-3), -12e-3, 30e-3);
  CHECK(rod.distance == Approx(2e-3).epsilon(1e-9));
  CHECK(rod.normal == std::array<double, 2>{-1, 0});
}

TEST_CASE("Contact radius is the radius of the outline at that height")
{
  for (const auto &[name, surface, size, smoothest] : samples())
    for (const double share : {0.05, 0.3, 0.7, 1.5, 4.0})
    {
      INFO(name << ", " << share);
      const double depth = share * smoothest, radius = contact_radius(surface, depth);
      CHECK(contact_edge_radius(surface, depth) > 0);
      const bool above_the_equator = std::holds_alternative<Sphere>(surface) && share > 1;
      if (std::isfinite(radius) && !above_the_equator)
        CHECK(surface_distance(surface, radius, depth).distance == Approx(0).margin(1e-12));
    }
  CHECK(contact_radius(FlatPuck(22.5e-3, 2e-3), 10e-3) == Approx(22.5e-3).epsilon(1e-12));
  CHECK(contact_radius(Sphere(8e-3), 8e-3) == Approx(8e-3).epsilon(1e-12));
  CHECK(std::isinf(contact_radius(Plane(), 1e-3)));
}

TEST_CASE("Impossible strikers are refused")
{
  CHECK_THROWS_WITH(
    FlatPuck(22.5e-3, 30e-3),
    "edge radius of the striker is 30 mm; allowed: more than 0 mm, at most 22.5 mm (its radius)");
  CHECK_THROWS_AS(FlatPuck(22.5e-3, 0), InvalidGeometry);
  CHECK_THROWS_AS(FlatPuck(-1, 1e-3), InvalidGeometry);
  CHECK_THROWS_AS(Sphere(std::nan("")), InvalidGeometry);
  CHECK_THROWS_AS(SphericalEndedRod(20e-3, 10e-3, 1e-3), InvalidGeometry);
  CHECK_THROWS_AS(SphericalEndedRod(20e-3, 30e-3, 20e-3), InvalidGeometry);
  CHECK_THROWS_AS(ConeFrustum(4e-3, pi / 2, 1e-3, 12e-3), InvalidGeometry);
  CHECK_THROWS_AS(ConeFrustum(4e-3, 0.5, 1e-3, 5e-3), InvalidGeometry);
  CHECK_THROWS_AS(SinusoidalCourt(0, 1e-2), InvalidGeometry);
}
