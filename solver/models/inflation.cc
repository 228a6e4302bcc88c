// SPDX-License-Identifier: Apache-2.0
#include "solver/models/inflation.h"

#include "solver/contributions/solid_body.h"
#include "solver/models/bulge.h"
#include "solver/part_law.h"
#include "solver/time/no_balance.h"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>
#include <utility>

namespace solemech::solver
{
namespace
{
/// Holds every unknown that the films do not reach, and one vertical position of each film, by soft springs
/// that carry no load at the solution.
class Anchor : public Contribution
{
public:
  Anchor(const Discretisation &mesh, std::vector<int> unknowns, double stiffness)
    : mesh_(&mesh), unknowns_(std::move(unknowns)), stiffness_(stiffness)
  {
  }
  bool add(const Vector &x, Vector &force, Tangent *tangent) const override
  {
    for (const int i : unknowns_)
    {
      force[i] += stiffness_ * x[i];
      if (tangent)
        mesh_->add_entry(tangent->values, i, i, stiffness_);
    }
    return true;
  }
  std::string name() const override { return "anchor"; }

private:
  const Discretisation *mesh_;
  std::vector<int>      unknowns_;
  double                stiffness_;
};

} // namespace

double fibre_rest_length(const AirUnit &unit, double height)
{
  const double per_area = unit.fibre_stiffness / (unit.fibre_spacing * unit.fibre_spacing);
  const double sunk = unit.gauge_pressure / per_area;
  // Tension k (x - w/2) = p with x = height - L0 and w = 0.002 L0, once x exceeds w ...
  const double taut = (height - sunk) / 1.001;
  if (height - taut >= 0.002 * taut)
    return taut;
  // ... and k x^2/(2 w) = p below: x^2 = 0.004 (height - x) p/k.
  const double half = 0.002 * sunk;
  return height - (std::sqrt(half * half + 2 * half * height) - half);
}

materials::TensileFibres fibres_of(const AirUnit &unit, double height)
{
  const double per_area =
    unit.has_fibres ? unit.fibre_stiffness / (unit.fibre_spacing * unit.fibre_spacing) : 0.0;
  return {per_area, fibre_rest_length(unit, height), unit.packed_share * height};
}

namespace
{
// A slack film has next to no stiffness until it is round: the first strides may have to be a millionth of
// the pressure.
constexpr double smallest_stride = 1e-7;    // of the pressure
constexpr double longer = 2, shorter = 0.2; // from one stride to the next

/// Raises a load from nothing to all of it, in strides as long as the attempts allow.
template <typename Attempt>
void raise_pressure(double stride, const Attempt &attempt)
{
  double reached = 0;
  while (reached < 1)
  {
    const double next = std::min(1.0, reached + stride);
    const auto   outcome = attempt(next);
    if (outcome.advanced)
    {
      reached = next;
      stride *= longer;
      continue;
    }
    stride *= shorter;
    if (stride < smallest_stride)
      throw NoBalance(fmt::format("the air unit cannot be inflated beyond {:.0f} % of its gauge pressure "
                                  "({}). Lower the pressure, or make the film thicker or stiffer",
                                  100 * reached, outcome.reason));
  }
}

/// @param force  against which residuals count [N]
StepSettings inflating_step(double force)
{
  return {.newton = {.tolerance = 1e-6, .n_iterations = 40}, .force_scale = force, .quasi_static = true};
}
} // namespace

void InflationFacts::add(const TimeIntegrator &integrator)
{
  steps += integrator.n_steps, repeated += integrator.n_repeated;
  iterations += integrator.n_iterations, descents += integrator.n_descents;
}

namespace
{
/// Nodes of the films of these units.
std::vector<bool> film_nodes(const Discretisation &mesh, const std::vector<UnitToInflate> &units)
{
  std::vector<bool> on_film(mesh.n_nodes(), false);
  for (const auto &unit : units)
    for (std::size_t c = 0; c < mesh.cells().size(); ++c)
      if (mesh.mesh().cells[c].part == unit.film_part)
        for (const unsigned node : mesh.cells()[c])
          on_film[node] = true;
  return on_film;
}

/// Unknowns that no film reaches.
std::vector<int> idle_unknowns(const Discretisation &mesh, const std::vector<bool> &on_film)
{
  std::vector<int> idle;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (unsigned c = 0; c < 2; ++c)
      if (mesh.dof(node, c) >= 0 && !on_film[node])
        idle.push_back(mesh.dof(node, c));
  return idle;
}

/// A vertical one of each film that nothing else holds: on the held base a pin would only hinder it.
std::vector<int> pinned_unknowns(const Discretisation &mesh, const std::vector<UnitToInflate> &units)
{
  std::vector<int> pinned;
  for (const auto &unit : units)
  {
    bool       held = false;
    const auto own = film_nodes(mesh, {unit});
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      held |= own[node] && mesh.dof(node, 1) < 0;
    const auto &face = mesh.mesh().faces[mesh.mesh().chambers[unit.chamber].facing.front().first];
    if (const int dof = mesh.dof(mesh.edge(face)[0], 1); dof >= 0 && !held)
      pinned.push_back(dof);
  }
  return pinned;
}

/// Film, gas and fibres of a unit at a share of its pressure.
void add_unit(EquationOfMotion &equation, const Discretisation &mesh, const UnitToInflate &unit, double share,
              const Case &input)
{
  auto kernel = make_part_kernel(unit.unit->film, 1.0, input);
  auto group = mesh.group(unit.film_part, kernel->n_branches(), mesh.nodes(), {});
  equation.contribute<SolidBody>(std::move(group), std::move(kernel));
  const auto &chamber = mesh.mesh().chambers[unit.chamber];
  equation.contribute<GasChamber>("gas", mesh, chamber, materials::ChamberGas{}, 0.0, std::nullopt)
    .hold(share * unit.unit->gauge_pressure);
  if (!unit.unit->has_fibres)
    return;
  AirUnit partly = *unit.unit;
  partly.gauge_pressure *= share;
  equation.contribute<FibreBundle>("fibres", mesh, chamber, fibres_of(partly, unit.height));
}
} // namespace

std::vector<Point> inflate(const Discretisation &mesh, const std::vector<UnitToInflate> &units,
                           const Case &input, InflationFacts &facts)
{
  std::vector<Point> displacement(mesh.n_nodes(), Point{0, 0});
  if (units.empty())
    return displacement;
  const auto on_film = film_nodes(mesh, units);
  const auto idle = idle_unknowns(mesh, on_film), pinned = pinned_unknowns(mesh, units);
  double     load = 0;
  for (const auto &unit : units)
    load += unit.unit->gauge_pressure * mesh.mesh().chambers[unit.chamber].drawn_area;

  Vector     x = Vector::Zero(mesh.n_unknowns());
  unsigned   n_failed = 0;
  const auto attempt = [&](double share) {
    EquationOfMotion equation;
    equation.numbering = &mesh;
    equation.mass.assign(mesh.pattern().nonZeros() + 1, 0.0);
    for (const auto &unit : units)
      add_unit(equation, mesh, unit, share, input);
    equation.contribute<Anchor>(mesh, idle, 1e3);
    equation.contribute<Anchor>(mesh, pinned, 1e6);
    TimeIntegrator integrator(equation, 1.0);
    integrator.x = x;
    integrator.start();
    // A long step: the film's slow branches have relaxed by the time the unit is built in.
    integrator.n_failures = n_failed;
    const auto outcome = integrator.step(1e9, inflating_step(std::max(load, 1e-3)));
    n_failed = integrator.n_failures;
    facts.add(integrator);
    if (outcome.advanced)
      x = integrator.x;
    return outcome;
  };

  raise_pressure(1, attempt);
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (unsigned c = 0; c < 2; ++c)
      if (const int dof = mesh.dof(node, c); dof >= 0)
        displacement[node][c] = x[dof];
  follow_bulge(mesh, on_film, displacement);
  if (!keeps_cells(mesh, on_film, displacement))
    throw NoBalance(
      "the inflated air unit leaves no room for the foam beside it. Lower the pressure, make the "
      "film stiffer, or leave more foam round the unit");
  return displacement;
}

Vector inflate_in_place(EquationOfMotion &equation, const std::vector<ChamberToFill> &chambers, double away,
                        InflationFacts &facts)
{
  TimeIntegrator integrator(equation, 1.0);
  const int      n = equation.n_unknowns();
  for (int k = n; k < equation.size(); ++k)
    equation.boundary.hold(k, away);
  integrator.x.tail(equation.n_freedoms()).setConstant(away);
  double force = 0;
  for (const auto &chamber : chambers)
  {
    const double volume = chamber.gas->volume(integrator.x);
    force = std::max(force, chamber.gauge_pressure * std::pow(volume, 2.0 / 3));
  }
  bool started = false;
  raise_pressure(0.1, [&](double share) {
    for (const auto &chamber : chambers)
      chamber.gas->hold((chamber.slack ? share : 1) * chamber.gauge_pressure);
    if (!std::exchange(started, true))
      integrator.start();
    return integrator.step(1e9, inflating_step(force));
  });
  facts.add(integrator);
  for (const auto &chamber : chambers)
    chamber.gas->seal(integrator.x, chamber.gauge_pressure);
  for (int k = n; k < equation.size(); ++k)
    equation.boundary.release(k);
  return integrator.x.head(n);
}
} // namespace solemech::solver
