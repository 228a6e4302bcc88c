// SPDX-License-Identifier: Apache-2.0
// Strikers on elastic layers and half-spaces against contact theory, through the contact of the program.
// Sinks are small, so that the linear theory applies, and results are scaled to the sizes at which they are
// known.
#include "materials/hencky.h"
#include "solver/contributions/contact.h"
#include "tests/external/check.h"
#include "tests/support/single_body.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, E = 2e6;
constexpr double newton = 1e-5; ///< residual over force: the ball's gap rounds at 1e-6 of the penetration

std::unique_ptr<solver::SolidKernel> linear(double nu)
{
  // Half of 1: rubber with bulk over shear modulus 5000.
  if (nu == 0.5)
    return solver::make_kernel(materials::Rubber{{E / 6, 0, 0, 0}, {5000 * E / 3}, {}});
  return solver::make_kernel(materials::IsotropicPlate{materials::hencky_from_young(E, nu), {}});
}

/// Lines that start with spacing `first` on both sides of `centre` (0: from the axis) and grow by `ratio` to
/// `last`.
Lines graded(double centre, double last, double first, double ratio)
{
  Lines lines{centre};
  for (double step = first, x = centre - step; centre > 0 && x > 0.7 * step; step *= ratio, x -= step)
    lines.push_back(x);
  if (centre > 0)
    lines.push_back(0);
  for (double step = first, x = centre + step; x < last - 0.7 * step; step *= ratio, x += step)
    lines.push_back(x);
  lines.push_back(last);
  std::sort(lines.begin(), lines.end());
  return lines;
}

/// The same lines counted from the other end.
Lines turned(Lines lines)
{
  const double last = lines.back();
  for (auto &x : lines)
    x = last - x;
  std::reverse(lines.begin(), lines.end());
  lines.front() = 0;
  return lines;
}

struct Pressed
{
  double force, radius, peak_pressure;
};

/// Force on a striker that has sunk into a layer bonded to the ground.
Pressed press(const Lines &r, const Lines &z, double nu, const geometry::RigidSurface &surface, double sink,
              double expected, double penalty, double pressure_window)
{
  StaticProblem problem(grid(r, z), MeshSection::axisymmetric, HeldFaces{.base = {true, true}});
  problem.fill(linear(nu));
  std::vector<geometry::BoundaryFace> top;
  for (const auto &face : problem.mesh.mesh().faces)
    if (face.id == static_cast<int>(geometry::BoundaryId::top))
      top.push_back(face);
  const auto striker = problem.equation.add(solver::lifted_body(0));
  auto       owned = std::make_unique<solver::Contact>(
    "tup", problem.mesh, top, surface,
    solver::ContactSettings{.penalty = penalty, .pressure_window = pressure_window}, striker, z.back(),
    false);
  const auto &contact = *owned;
  problem.equation.contributions.push_back(std::move(owned));
  Vector guess = Vector::Zero(problem.equation.size());
  guess[problem.equation.n_unknowns()] = -sink;
  const Vector x = problem.solve(guess, expected, newton);
  const auto   state = contact.state(x);
  return {state.force, state.radius, state.peak_pressure};
}
} // namespace

TEST_CASE("a flat punch on a wide bonded slab", "[external]")
{
  // 3 %: a mesh at an edge where the pressure has no limit, and a rounded edge of 1/450 of the radius.
  constexpr double  tolerance = 0.03;
  const std::string source =
    "flat punch of 45 mm on a bonded slab of 25 mm, E 2 MPa, sunk by 1 mm: integral equation";
  const double radius = 22.5 * mm, height = 25 * mm, sink = 0.01 * mm;
  // Finest at the rim and at the top; five radii wide.
  const Lines r = graded(radius, 5 * radius, 0.1 * mm, 1.35), z = turned(graded(0, height, 0.1 * mm, 1.35));
  // Sinks into the surface by a thousandth of the sink at the mean pressure.
  const double penalty = 0.14e6 * 0.01 / std::pow(1e-3 * sink, 2);
  for (const auto &[nu, expected] : {std::pair{0.3, 227.80}, std::pair{0.0, 187.14}})
  {
    const auto pressed =
      press(r, z, nu, geometry::FlatPuck(radius, 0.05 * mm), sink, expected * sink / mm, penalty, 5 * mm);
    external_check({source, fmt::format("force, Poisson ratio {:.1f}", nu), expected,
                    pressed.force * 1 * mm / sink, tolerance, "N"});
  }
}

TEST_CASE("a ball on a half-space", "[external]")
{
  // 2 % force: the half-space is 150 contact radii wide and deep, which adds 0.8 %.
  constexpr double  tolerance = 0.02;
  const std::string source =
    "Hertz, ball of radius 25 mm, E 2 MPa, Poisson ratio 0.3, sunk by 2 mm (handbook)";
  // Radius a hundred times larger at the same contact radius: strain a hundred times smaller, as is the
  // force.
  const double scale = 100, R = 25 * mm * scale, sink = 2 * mm / scale, a = std::sqrt(R * sink),
               far = 150 * a;
  const Lines  r = graded(a, far, a / 20, 1.3), z = turned(graded(0, far, a / 20, 1.3));
  const double penalty = 0.4e6 / scale / std::pow(1e-3 * sink, 2);
  const auto   pressed = press(r, z, 0.3, geometry::Sphere(R), sink, 41.442 / scale, penalty, a / 3);
  external_check({source, "force", 41.442, pressed.force * scale, tolerance, "N"});
  // One element of a/20 either way.
  external_check({source, "contact radius", 7.0711, pressed.radius / mm, 0.05, "mm"});
  // Mean over the inner third: 6 (1 - (8/9)^1.5) of the pressure at the centre.
  const double share = 6 * (1 - std::pow(8. / 9, 1.5));
  external_check({source, "peak pressure, from the mean over the inner third", 0.39574,
                  pressed.peak_pressure / share * scale / 1e6, tolerance, "MPa"});
}

TEST_CASE("a ball on a bonded layer", "[external]")
{
  constexpr double tolerance =
    0.02; // as the half-space, whose far field the layer does not need: mesh and penalty
  const std::string source = "ball of radius 25 mm on a bonded layer of 25 mm, E 2 MPa: integral equation";
  const double      scale = 100, R = 25 * mm * scale, height = 25 * mm;
  struct Row
  {
    double nu, contact_share, sink, force;
  };
  for (const auto &[nu, share, sink_mm, expected] :
       {Row{0.3, 0.1, 0.2355, 1.8325}, Row{0.3, 0.3, 1.8863, 50.092}, Row{0.3, 0.5, 4.7428, 240.77},
        Row{0.5, 0.3, 1.7876, 61.184}, Row{0.0, 0.3, 1.9266, 45.440}})
  {
    const double a = share * height, sink = sink_mm * mm / scale;
    const Lines  r = graded(a, 6 * height, a / 20, 1.3), z = turned(graded(0, height, a / 20, 1.3));
    const double penalty = expected / scale / (M_PI * a * a) / std::pow(1e-3 * sink, 2);
    const auto   pressed = press(r, z, nu, geometry::Sphere(R), sink, expected / scale, penalty, a / 10);
    external_check(
      {source, fmt::format("force, Poisson ratio {:.1f}, contact radius {:.1f} of the height", nu, share),
       expected, pressed.force * scale, tolerance, "N"});
  }
}
