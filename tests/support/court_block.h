// SPDX-License-Identifier: Apache-2.0
// A plane section on a tensor grid whose top is pressed by the flat court of treads and slid by it. Its base
// hangs on stiff springs, one a node, so that what holds it is known node by node.
#pragma once

#include "solver/contributions/applied_force.h"
#include "solver/contributions/sliding_contact.h"
#include "tests/support/single_body.h"

#include <algorithm>
#include <cmath>

namespace solemech::tests
{
/// Lines over 0 to `last` with the spacing `step` between `from` and `to`, growing by `ratio` on either side.
inline Lines finest_between(double from, double to, double step, double ratio, double last)
{
  const auto n = static_cast<unsigned>(std::ceil((to - from) / step));
  Lines      lines = even_lines(from, to, std::max(1u, n));
  for (double s = step * ratio, x = from - s; from > 0; s *= ratio, x -= s)
  {
    if (x < 0.7 * s)
    {
      lines.push_back(0);
      break;
    }
    lines.push_back(x);
  }
  for (double s = step * ratio, x = to + s; to < last; s *= ratio, x += s)
  {
    if (x > last - 0.7 * s)
    {
      lines.push_back(last);
      break;
    }
    lines.push_back(x);
  }
  std::sort(lines.begin(), lines.end());
  lines.front() = 0;
  return lines;
}

/// A spring from each node of a boundary to the ground [N/m per metre of depth].
class Anchors : public solver::Contribution
{
public:
  Anchors(const solver::Discretisation &mesh, int boundary, double stiffness)
    : mesh_(mesh), stiffness_(stiffness)
  {
    for (const auto &face : mesh.mesh().faces)
      if (face.id == boundary)
        for (const unsigned node : mesh.edge(face))
          nodes_.push_back(node);
    std::sort(nodes_.begin(), nodes_.end());
    nodes_.erase(std::unique(nodes_.begin(), nodes_.end()), nodes_.end());
  }

  bool add(const Vector &x, Vector &force, solver::Tangent *tangent) const override
  {
    for (const unsigned node : nodes_)
      for (unsigned c = 0; c < 2; ++c)
        if (const int dof = mesh_.dof(node, c); dof >= 0)
        {
          force[dof] += stiffness_ * x[dof];
          if (tangent)
            mesh_.add_entry(tangent->values, dof, dof, stiffness_);
        }
    return true;
  }
  std::string name() const override { return "anchors"; }

  /// Sideways and upward force on the body [N/m], and their moment about the origin, anticlockwise [N].
  std::array<double, 3> hold(const Vector &x) const
  {
    std::array<double, 3> sum{};
    for (const unsigned node : nodes_)
    {
      const double ux = x[mesh_.dof(node, 0)], uz = x[mesh_.dof(node, 1)];
      const double fx = -stiffness_ * ux, fz = -stiffness_ * uz;
      sum[0] += fx, sum[1] += fz;
      sum[2] += (mesh_.nodes()[node][0] + ux) * fz - (mesh_.nodes()[node][1] + uz) * fx;
    }
    return sum;
  }

private:
  const solver::Discretisation &mesh_;
  double                        stiffness_;
  std::vector<unsigned>         nodes_;
};

/// Pressed by a force, then slid.
class CourtBlock
{
public:
  /// @param place        where a node of the grid lies
  /// @param depth        penetration of the court at `pressure`
  /// @param slip_length  elastic slip of the friction
  template <typename Place>
  CourtBlock(const Lines &x, const Lines &z, Place &&place, std::unique_ptr<solver::SolidKernel> kernel,
             double pressure, double depth, double slip_length, double anchor)
    : problem(grid(x, z), MeshSection::whole_plane, HeldFaces{.axis = {false, false}}), slip_(slip_length)
  {
    map_nodes(problem.mesh, place);
    problem.fill(std::move(kernel));
    auto anchors =
      std::make_unique<Anchors>(problem.mesh, static_cast<int>(geometry::BoundaryId::base), anchor);
    base = anchors.get();
    problem.equation.contributions.push_back(std::move(anchors));
    std::vector<geometry::BoundaryFace> top;
    for (const auto &face : problem.mesh.mesh().faces)
      if (face.id == static_cast<int>(geometry::BoundaryId::top))
        top.push_back(face);
    double highest = 0;
    for (const auto &node : problem.mesh.nodes())
      highest = std::max(highest, node[1]);
    auto contact = std::make_unique<solver::SlidingContact>(
      "court", problem.mesh, top, pressure / (depth * depth), slip_length, 0, highest);
    court = contact.get();
    problem.equation.contributions.push_back(std::move(contact));
    problem.equation.add(solver::lifted_body(0));
    auto force = std::make_unique<solver::AppliedForce>(problem.equation.n_unknowns());
    load = force.get();
    problem.equation.contributions.push_back(std::move(force));
    integrator = std::make_unique<solver::TimeIntegrator>(problem.equation, 1.0);
    settings.quasi_static = true;
    settings.newton.n_iterations = 10;
    settings.newton.tolerance = 1e-5;
    integrator->start();
  }

  /// @param touch  way down at first, of the size of a penetration [m]
  void press(double force, double touch)
  {
    settings.force_scale = 0.01 * force;
    double sunk = 0;
    for (double share = 1; court->state(integrator->x).normal < 0.02 * force;)
    {
      problem.equation.boundary.hold(problem.equation.n_unknowns(), -(sunk + touch * share));
      if (integrator->step(1.0, settings).advanced)
        sunk += touch * share, share *= 1.5;
      else
        share *= 0.5;
      if (share < 1e-4)
        FAIL("the court cannot be brought to touch");
    }
    problem.equation.boundary.release(problem.equation.n_unknowns());
    settings.extrapolate = 1;
    const double first = court->state(integrator->x).normal;
    settings.force_scale = force;
    led_ = 0, share_ = 0.02;
    lead(1, 0.1, [&](double to) { load->force = first + to * (force - first); });
  }

  /// Slides the court on; steps grow from half the elastic slip to `longest`.
  void drive_to(double way, double longest)
  {
    settings.extrapolate = way_ == 0 ? 0 : 1;
    if (way_ == 0)
      share_ = 0.5 * slip_;
    led_ = way_;
    lead(way, longest, [&](double to) { court->drive_to(to); });
    way_ = led_;
  }

  solver::SlidingState state() const { return court->state(integrator->x); }

  /// Points of the top from left to right.
  std::vector<solver::SlidingPointState> points() const
  {
    auto all = court->points(integrator->x);
    std::sort(all.begin(), all.end(),
              [](const auto &a, const auto &b) { return a.at_rest[0] < b.at_rest[0]; });
    return all;
  }

  StaticProblem                           problem;
  Anchors                                *base = nullptr;
  solver::SlidingContact                 *court = nullptr;
  solver::AppliedForce                   *load = nullptr;
  std::unique_ptr<solver::TimeIntegrator> integrator;
  solver::StepSettings                    settings;

private:
  double slip_, led_ = 0, share_ = 0, way_ = 0;

  /// From led_ to `last`, by shorter steps where a longer one finds no balance.
  template <typename To>
  void lead(double last, double longest, To &&to)
  {
    const double least = 1e-7 * (last - led_);
    while (led_ < last - least)
    {
      const double next = std::min(last, led_ + share_);
      to(next);
      const auto trial = integrator->step(next - led_, settings);
      if (trial.advanced)
        led_ = next, share_ = std::min(1.5 * share_, longest);
      else
      {
        to(led_);
        share_ *= 0.5;
        INFO(trial.reason);
        REQUIRE(share_ > least);
      }
    }
  }
};
} // namespace solemech::tests
