// SPDX-License-Identifier: Apache-2.0
// The solver as the tools see it: a function from a case to its result. Whatever calculates takes it as an
// argument, so that tools link no solver library and tests hand in made-up answers.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <functional>

namespace solemech::tools
{
/// What is wanted of a run beside its readings, curves and energy account.
struct SolveWish
{
  bool pictures = true;       ///< the deformed stack in time
  bool estimate_error = true; ///< by a second, coarser run; may refine until the wished accuracy is met
  int  level = 0; ///< refinement steps above the mesh and step of the wished accuracy; -1: coarser
};

/// Readings at the wished accuracy and nothing else.
inline constexpr SolveWish readings_only{.pictures = false, .estimate_error = false, .level = 0};

/// A run whose readings are only compared with other runs of its kind.
inline constexpr SolveWish coarser_run{.pictures = false, .estimate_error = false, .level = -1};

/// Told now and then: share of the run that is done, 0..1, and what is going on. Answers false to stop.
using RunProgress = std::function<bool(double fraction, const char *what)>;

/// Solves one case. A run that stops early comes back incomplete, with its reason.
/// @throws std::invalid_argument when the stack or a material cannot be built
using Solve = std::function<solver::Result(const solver::Case &setup, const SolveWish &wish,
                                           const RunProgress &progress)>;
} // namespace solemech::tools
