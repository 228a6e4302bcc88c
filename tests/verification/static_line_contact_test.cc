// SPDX-License-Identifier: Apache-2.0
// Rubber under the sliding court of the program, in plane strain, against contact theory: Hertz's line
// contact, stick and slip under it (Cattaneo 1938, Mindlin 1949); and the bending of a free lug as a short
// beam. Worked numbers: E 4 MPa, Poisson ratio 0.5.
#include "materials/hencky.h"
#include "solver/contributions/applied_force.h"
#include "solver/contributions/sliding_contact.h"
#include "solver/unsymmetric_solver.h"
#include "tests/external/check.h"
#include "tests/support/single_body.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, E = 4e6;

/// Near enough to incompressible: a bulk modulus of 5000 times the shear modulus.
std::unique_ptr<solver::SolidKernel> incompressible()
{
  return solver::make_kernel(materials::Rubber{{E / 6, 0, 0, 0}, {5000 * E / 3}, {}});
}

/// Lines from 0 to `last`: `first` apart up to `even` on both sides of `middle`, growing by `ratio` from
/// there.
Lines graded(double middle, double last, double first, double ratio, double even = 0)
{
  Lines lines{middle};
  for (const double side : {-1.0, 1.0})
  {
    const double room = side < 0 ? middle : last - middle;
    if (room <= 0)
      continue;
    double way = 0;
    for (double step = first; way + 1.7 * step < room; step *= way < even ? 1 : ratio)
      lines.push_back(middle + side * (way += step));
    lines.push_back(middle + side * room);
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

/// A body bonded below under the court; its top may be moved before.
class UnderCourt
{
public:
  /// @param raise  of the top at x from the middle of the grid [m]
  UnderCourt(const Lines &x, const Lines &z, const std::function<double(double)> &raise, double penalty,
             double slip_length, double friction)
    : problem_(grid(x, z), MeshSection::whole_plane, HeldFaces{.axis = {false, false}, .base = {true, true}})
  {
    const double middle = 0.5 * (x.front() + x.back()), height = z.back();
    map_nodes(problem_.mesh, [&](const Point &at) {
      const double share = at[1] / height;
      return Point{at[0] - middle, at[1] + share * share * share * raise(at[0] - middle)};
    });
    problem_.fill(incompressible());
    std::vector<geometry::BoundaryFace> top;
    for (const auto &face : problem_.mesh.mesh().faces)
      if (face.id == static_cast<int>(geometry::BoundaryId::top))
        top.push_back(face);
    auto contact = std::make_unique<solver::SlidingContact>("court", problem_.mesh, top, penalty, slip_length,
                                                            0, height + raise(0));
    court = contact.get();
    court->set_shear_law([friction](double p) { return solver::ShearLimit{friction * p, friction}; });
    problem_.equation.contributions.push_back(std::move(contact));
    auto force = std::make_unique<solver::AppliedForce>(problem_.equation.n_unknowns());
    load_ = force.get();
    problem_.equation.contributions.push_back(std::move(force));
    problem_.equation.body_mass = Vector::Zero(1);
    integrator_ = std::make_unique<solver::TimeIntegrator>(
      problem_.equation, 1.0, std::make_unique<solver::UnsymmetricSolver>(problem_.mesh.pattern()));
    integrator_->quasi_static = true;
    integrator_->newton_settings.n_iterations = 60;
    integrator_->newton_settings.tolerance = 1e-6;
    integrator_->start();
  }

  /// Lowers the court by `step` and less until it carries the force [N/m]; keeps that force then.
  void press(double first, double step, double force)
  {
    integrator_->force_scale = force;
    for (double sunk = first; state().normal < force;)
    {
      integrator_->prescribed[0] = -sunk;
      const auto outcome = integrator_->step(1.0);
      INFO(outcome.reason << " at " << sunk << " carrying " << state().normal);
      REQUIRE(outcome.advanced);
      sunk += std::min(step, 0.3 * sunk);
    }
    load_->force = state().normal;
    integrator_->prescribed[0].reset();
  }

  /// In steps of at most `step`.
  void drive_to(double place, double step)
  {
    advance(place_, place, step, [&](double now) { court->drive_to(now); });
    place_ = place;
  }

  solver::SlidingState state() const { return court->state(integrator_->x); }
  double               sink() const { return -integrator_->x[problem_.equation.n_unknowns()]; }

  /// From left to right.
  std::vector<solver::SlidingPointState> points() const
  {
    auto all = court->points(integrator_->x);
    std::sort(all.begin(), all.end(),
              [](const auto &a, const auto &b) { return a.at_rest[0] < b.at_rest[0]; });
    return all;
  }

private:
  /// Leads something from one value to another, in smaller steps where no balance is found.
  void advance(double from, double to, double step, const std::function<void(double)> &lead)
  {
    for (double at = from; at < to * (1 - 1e-12);)
    {
      const double next = std::min(to, at + step);
      lead(next);
      const auto outcome = integrator_->step((next - at) / mm);
      if (outcome.advanced)
        at = next, integrator_->extrapolate = 1;
      else
      {
        INFO(outcome.reason << " at " << at / to << ", grip " << state().shear / state().normal);
        REQUIRE((step *= 0.5) > 1e-6 * to);
      }
    }
  }

  double                                  place_ = 0;
  solver::AppliedForce                   *load_ = nullptr;
  StaticProblem                           problem_;
  std::unique_ptr<solver::TimeIntegrator> integrator_;

public:
  solver::SlidingContact *court = nullptr;
};
} // namespace

TEST_CASE("a round rubber bar under a flat court, pressed and pushed: Hertz, then stick and slip",
          "[external]")
{
  // Radius 5 mm and 0.1 N/mm: half width 0.3455 mm, peak 0.1843 MPa. The body is 25 half widths deep and 50
  // wide.
  const double R = 5 * mm, about = 100, modulus = E / 0.75, mu = 0.5;
  const double b = std::sqrt(4 * about * R / (M_PI * modulus)), peak = 2 * about / (M_PI * b);
  const Lines  x = graded(25 * b, 50 * b, b / 16, 1.45, 1.15 * b),
              depth = graded(0, 25 * b, b / 16, 1.45, 0.3 * b);
  Lines z;
  for (auto it = depth.rbegin(); it != depth.rend(); ++it)
    z.push_back(depth.back() - *it);
  // The bar sinks by about b^2/R; the court into its face by a two-hundredth of that.
  const double sunk = 5e-3 * b * b / R, slip = 5e-3 * b * peak / E;
  UnderCourt   bar(
      x, z, [&](double at) { return -at * at / (2 * R); }, peak / (sunk * sunk), slip, mu);
  bar.press(0.05 * b * b / R, 0.1 * b * b / R, about);
  // The court stays at the height where it carries a little more.
  const double force = bar.state().normal, grown = std::sqrt(force / about);
  CHECK(force < 1.2 * about);

  const std::string hertz =
    "Hertz, line contact: radius 5 mm, E 4 MPa, Poisson ratio 0.5, 0.1 N/mm (handbook)";
  external_check(
    {hertz, "half width of contact", 0.34549, 0.5 * bar.state().contact_length / grown / mm, 0.03, "mm"});
  // The mean over the inner third of an ellipse: asin(1/3) + sqrt(8)/9 over 2/3.
  double inner = 0, length = 0;
  for (const auto &point : bar.points())
    if (std::abs(point.at_rest[0]) < grown * b / 3)
      inner += point.pressure * point.length, length += point.length;
  const double share = 1.5 * (std::asin(1. / 3) + std::sqrt(8.) / 9);
  external_check({hertz, "peak pressure, from the mean over the inner third", 0.18426,
                  inner / length / share / grown / 1e6, 0.02, "MPa"});

  // Pushed until half of the friction that the force allows is used up: the middle still sticks.
  double place = 0;
  for (double step = 0.2 * slip; bar.state().shear < 0.5 * mu * force; step = std::min(1.3 * step, 2 * slip))
    bar.drive_to(place += step, step);
  const double used = bar.state().shear / (mu * force);
  CHECK(used == Approx(0.5).margin(0.02));
  // Between the last point that sticks and the first one that slips, on either side.
  double from = 0, to = 0;
  for (const auto &point : bar.points())
    if (point.pressure > 0 && std::abs(point.shear) < 0.995 * mu * point.pressure)
    {
      from = std::min(from, point.at_rest[0]);
      to = std::max(to, point.at_rest[0]);
    }
  external_check(
    {"Cattaneo 1938, Mindlin 1949: stick width of a line contact at half of full friction (from memory)",
     "stick half width over contact half width", std::sqrt(1 - 0.5),
     0.5 * (to - from) / (0.5 * bar.state().contact_length) * std::sqrt(0.5 / (1 - used)), 0.03, "-"});
  // Shear in the middle: mu p0 (1 - c/b).
  double middle = 0, around = 0;
  for (const auto &point : bar.points())
    if (std::abs(point.at_rest[0]) < b / 12)
      middle += point.shear * point.length, around += point.length;
  external_check(
    {"Cattaneo 1938, Mindlin 1949: stick width of a line contact at half of full friction (from memory)",
     "shear in the middle over mu times the peak pressure", 1 - std::sqrt(0.5),
     middle / around / (mu * peak * grown) - (std::sqrt(0.5) - std::sqrt(1 - used)), 0.03, "-"});
}

TEST_CASE("a free lug bends as a short beam", "[external]")
{
  // d/F = h^3/(3 E' I) + h/(5/6 G A), E' = E/(1 - nu^2) in plane strain, per metre of bar.
  const double w = 6 * mm, push = 1e-3 * E * mm;
  const auto   stiffness = [&](double h, std::unique_ptr<solver::SolidKernel> kernel) {
    StaticProblem beam(grid(even_lines(0, w, 12), even_lines(0, h, static_cast<unsigned>(h / mm * 2))),
                         MeshSection::whole_plane, HeldFaces{.axis = {false, false}, .base = {true, true}});
    beam.fill(std::move(kernel));
    // Spread as a beam carries it: parabolic over the end.
    beam.equation.contributions.push_back(std::make_unique<DeadLoad>(
      0.5 * traction_load(beam.mesh, static_cast<int>(geometry::BoundaryId::top), [&](const Point &at) {
        return Point{1.5 * push / w * (1 - std::pow(2 * at[0] / w - 1, 2)), 0};
      })));
    const Vector at = beam.solve(Vector::Zero(beam.equation.size()), push, 1e-7);
    double       shift = 0, n = 0;
    for (unsigned node = 0; node < beam.mesh.n_nodes(); ++node)
      if (beam.mesh.nodes()[node][1] > h * (1 - 1e-9))
        shift += at[beam.mesh.dof(node, 0)], n += 1;
    return push / (shift / n);
  };
  const auto beam = [&](double h, double nu) {
    return 1 / (4 * h * h * h * (1 - nu * nu) / (E * w * w * w) + h * 2 * (1 + nu) / (5. / 6 * E * w));
  };
  // Poisson ratio 0: a root that is held narrows nothing.
  for (const double h : {4 * mm, 18 * mm})
    external_check(
      {fmt::format("short beam with shear, free end (handbook): bar 6 mm wide, {:.0f} mm high", h / mm),
       "stiffness of a lug per metre, Poisson ratio 0", beam(h, 0) / 1e6,
       stiffness(h, solver::make_kernel(materials::IsotropicPlate{materials::hencky_from_young(E, 0), {}})) /
         1e6,
       0.05, "MPa"});
  // Rubber wants to narrow where it is bonded: stiffer than the beam, the less the taller.
  const double low = stiffness(4 * mm, incompressible()) / beam(4 * mm, 0.5),
               tall = stiffness(36 * mm, incompressible()) / beam(36 * mm, 0.5);
  CHECK(low > tall);
  CHECK(tall > 1);
  external_check({"short beam with shear, free end (handbook): bar 6 mm wide, 36 mm high",
                  "stiffness of a lug per metre over the beam's, rubber", 1, tall, 0.05, "-"});
}
