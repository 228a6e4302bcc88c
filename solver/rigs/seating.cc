// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/seating.h"

#include "solver/time/no_balance.h"

#include <algorithm>

namespace solemech::solver
{
namespace
{
constexpr double seated_share = 0.01, most_seated = 1; // of the load; [N]
// Of the stack height: where the head starts, within which the stack has to answer, and what a step under a
// force may take.
constexpr double first_depth = 1e-5, deepest = 0.3, longest_way = 0.1;
constexpr int    most_failures = 6; // one after the other
} // namespace

void seat(StackModel &model, TimeIntegrator &integrator, StepSettings &settings, AppliedForce &head,
          double load, double dt)
{
  const int    tup = model.tup_unknown();
  const double wanted = std::min(seated_share * load, most_seated);
  const auto   carried = [&] { return model.tup_contact->state(integrator.x).force; };
  int          n_failed = 0;
  for (double depth = first_depth * model.height; carried() < wanted;)
  {
    model.equation.boundary.hold(tup, -depth);
    const bool advanced = integrator.step(dt, settings).advanced;
    n_failed = advanced ? 0 : n_failed + 1;
    if (depth > deepest * model.height || n_failed > most_failures)
      throw NoBalance("the load cannot be put on the stack. Try accuracy = \"0.5 %\"");
    depth = advanced ? 1.5 * depth : 0.5 * (depth - integrator.x[tup]); // half way, when it fails
  }
  model.equation.boundary.release(tup);
  settings.longest_way = longest_way * model.height;
  head.force = carried();
  integrator.start();
}
} // namespace solemech::solver
