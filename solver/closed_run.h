// SPDX-License-Identifier: Apache-2.0
// A run is repeated with shorter steps, closer iterations or both while its energy account stays open; one
// that cannot be closed is a failed run.
#pragma once

#include "solver/resolution.h"
#include "solver/run.h"
#include "solver/time/account.h"

namespace solemech::solver
{
/// The result whose account counts.
inline Result &accounted(Result &result)
{
  return result;
}

/// @param run_at  a resolution -> a Result, or what `accounted` finds one in
/// @throws RunFailed, the result with it, that says where the account is open
template <typename Run>
auto closed_run(Resolution resolution, const Run &run_at)
{
  constexpr int n_repetitions = 5;
  auto          run = run_at(resolution);
  OpenParts     parts;
  for (int i = 0; i < n_repetitions && open_share(accounted(run)) > most_open; ++i)
  {
    const auto &facts = accounted(run).facts;
    if (facts.ledger_numerical > 0.5 * most_open)
      resolution.step_tolerance *= 0.5;
    if (facts.ledger_residual > 0.5 * most_open)
      resolution.newton_tolerance *= 0.1;
    if (i + 1 == n_repetitions)
      resolution.open_parts = &parts; // takes time: only for the run that may be refused
    run = run_at(resolution);
  }
  if (Result &result = accounted(run); open_share(result) > most_open)
  {
    result.complete = false;
    result.stop_reason = open_account_text(result, parts);
    const std::string message = result.stop_reason;
    throw RunFailed(message, std::move(result));
  }
  return run;
}
} // namespace solemech::solver
