// SPDX-License-Identifier: Apache-2.0
// Many cases on all processors: equal ones are solved once, stored ones are read back, and each new result is
// stored the moment it is there, so that whatever ends the process loses none that was finished.
#pragma once

#include "tools/study/run_store.h"

#include <atomic>
#include <functional>
#include <string>
#include <vector>

namespace solemech::tools
{
struct ManyRuns
{
  std::vector<solver::Result> results; ///< one a case, in their order; incomplete after an interruption
  std::size_t                 n_calculated = 0, n_from_store = 0; ///< different runs; equal cases count once
};

/// Told now and then: share of all the work that is done, 0..1, and a few words.
using ManyProgress = std::function<void(double fraction, const std::string &what)>;

/// @param store        nullptr: nothing is read or kept
/// @param progress     may be empty; called from several threads
/// @param interrupted  becomes true when the person wants to stop: no further run is begun
/// @throws what `solve` throws, and solver::ResultsError when a result cannot be stored
ManyRuns run_many(const std::vector<solver::Case> &cases, const SolveWish &wish, const Solve &solve,
                  const RunStore *store, const ManyProgress &progress, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
