// SPDX-License-Identifier: Apache-2.0
#include "solver/results/recorder.h"

#include "solver/results/catalogue.h"
#include "solver/rig_parts.h"

#include <cassert>

namespace solemech::solver
{
void add_losses(Result &result)
{
  std::map<std::string, double> lost;
  for (const auto &row : result.ledger)
    if (row.type == EnergyKind::dissipated && row.part != rig_part::guide)
      lost[row.part] += row.values.back();
  for (const auto &[part, energy] : lost)
    add_reading(result, catalogue.lost_in_part, part, energy,
                "turned into heat in this part until the end of contact");
}

std::optional<Objection> Recorder::look(const AcceptedStep &step)
{
  assert(&step.state == &state_);
  result_.time.push_back(step.time);
  for (const auto &probe : probes_)
    probe->read(step.state, curves_);
  energies_.record(step.state);
  pictures_.look(step.state, step.time, step.is_mark);
  return {};
}

void Recorder::end_at(double time)
{
  auto        &times = result_.time;
  const double before = times[times.size() - 2], share = (time - before) / (times.back() - before);
  curves_.take_back(share);
  energies_.take_back(share);
  times.back() = time;
}

Result Recorder::finish()
{
  result_.curves = curves_.moved();
  result_.ledger = energies_.moved();
  result_.picture = pictures_.moved();
  auto &facts = result_.facts;
  facts.steps += state_.n_steps;
  facts.repeated_steps += state_.n_repeated;
  facts.iterations += state_.n_iterations;
  facts.descents += state_.n_descents;
  return std::move(result_);
}
} // namespace solemech::solver
