// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/slow_bench.h"

#include "solver/part_law.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace solemech::solver
{
namespace
{
constexpr double   balance = 2e-4;    // of the residual against the force on the tool
constexpr double   same = 1e-6;       // places, over a step
constexpr unsigned most_halvings = 8; // of a step, before the bench stops
} // namespace

SlowBench::SlowBench(SectionModel &model, int led, double scale, const Resolution &resolution)
  : integrator(model.equation, 1.0), model_(model), led_(led),
    least_force_(scale), settings_{
                           .force_scale = scale, .quasi_static = true, .along_tangent = true, .descend = true}
{
  settings_.newton.tolerance = balance * resolution.newton_tolerance;
  integrator.book_parts(resolution.open_parts);
}

std::string SlowBench::lead_to(double value, double rate, unsigned n_steps)
{
  double   step = (value - at()) / n_steps;
  unsigned n_halvings = 0;
  while (std::abs(value - at()) > same * std::abs(step))
  {
    const double left = value - at(), to = std::abs(left) < (1 + same) * std::abs(step) ? value : at() + step;
    model_.equation.boundary.hold(led_, to);
    const auto outcome = integrator.step(std::abs(to - at()) / rate, settings_);
    if (!outcome.advanced)
    {
      if (++n_halvings > most_halvings)
        return outcome.reason;
      step *= 0.5;
      continue;
    }
    const auto seen = on_step();
    if (seen.stop)
      return *seen.stop;
    settings_.force_scale = std::max(seen.force, least_force_);
  }
  return {};
}

RollerContact roller_contact(const LongSection &section, const Case &input, const Resolution &resolution)
{
  double softest = std::numeric_limits<double>::max(), low = softest, high = -softest;
  for (const auto &part : section.parts)
    softest = std::min(softest, stiffest_confined_modulus(part.material, input));
  for (const auto &vertex : section.mesh.vertices)
    low = std::min(low, vertex[1]), high = std::max(high, vertex[1]);
  const double depth = resolution.penetration * (high - low);
  return {depth, softest / (depth * depth)};
}

double touching_height(const SectionLine &line, Meets meets, double radius, double place)
{
  const double side = meets == Meets::lower_face ? -1 : 1;
  double       height = -std::numeric_limits<double>::max(); // away from the section
  for (const Point &point : line.drawn())
    if (const double apart = point[0] - place; std::abs(apart) < radius)
      height = std::max(height, side * point[1] + std::sqrt(radius * radius - apart * apart));
  return side * height;
}

PlateLines::PlateLines(const LongSection &section, const Discretisation &mesh, const std::string &plate)
{
  if (plate.empty())
    return;
  const auto part = std::ranges::find(section.parts, plate, &SectionPart::name);
  if (part == section.parts.end())
    throw std::invalid_argument("the section has no part '" + plate + "'");
  for (const auto side : {SectionLine::Side::lower, SectionLine::Side::upper})
    lines_.emplace_back(mesh, part->cells, side);
}

std::array<double, 2> PlateLines::strains(const Vector &x) const
{
  double most = 0, least = 0;
  for (const auto &line : lines_)
    for (const auto &at : line.at(x))
      most = std::max(most, at.strain), least = std::min(least, at.strain);
  return {most, least};
}

Recorder bench_recorder(const SectionModel &model, const SlowBench &bench, std::unique_ptr<Probe> probe)
{
  Result known;
  known.facts.unknowns = static_cast<std::size_t>(model.equation.size());
  known.facts.cells = model.mesh->cells().size();
  Probes probes;
  probes.push_back(std::move(probe));
  return Recorder(bench.integrator, std::move(probes), EnergyRows({}),
                  Snapshots(*model.mesh, model.bodies, {}, 0), std::move(known));
}
} // namespace solemech::solver
