// SPDX-License-Identifier: Apache-2.0
// Case to Result: the one door of the solver.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <functional>
#include <stdexcept>

namespace solemech::solver
{
struct RunOptions
{
  /// Called now and then with the share done (0..1) and what is being done; returns false to stop the run.
  std::function<bool(double share, const char *what)> progress;
  /// Pictures of the deformed stack are collected.
  bool pictures = true;
  /// The error of the readings is estimated by a second, coarser run.
  bool estimate_error = true;
  /// Refinement steps that may follow when the estimate misses the wished accuracy.
  unsigned n_refinements = 2;
  /// Refinement steps above the mesh and step that the wished accuracy asks for; -1: the coarser run that
  /// errors are estimated with.
  int level = 0;
};

/// Numerical failure that step control could not cure. `partial` holds what was computed.
class RunFailed : public std::runtime_error
{
public:
  RunFailed(const std::string &message, Result result)
    : std::runtime_error(message), partial(std::move(result))
  {
  }
  Result partial;
};

/// The user asked to stop.
class RunStopped : public std::runtime_error
{
public:
  RunStopped() : std::runtime_error("stopped") {}
};

/// Runs a case to its wished accuracy. Throws RunFailed, RunStopped, InvalidParameter, InvalidGeometry.
Result run(const Case &input, const RunOptions &options = {});
} // namespace solemech::solver
