// SPDX-License-Identifier: Apache-2.0
// Press: slow cycles or body-like pulses, driven by displacement or force; inertia is left out.
#pragma once

#include "solver/tup.h"

#include <utility>
#include <vector>

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

enum class PressControl { displacement, force };
enum class PressWave { triangle, half_sine, table };
struct PressRig
{
  /// A press is read at one compression, where a blow's force and energy make up for each other: its mesh is
  /// finer by this.
  static constexpr double mesh = 1.125;

  Tup                                    tup;
  PressControl                           control = PressControl::displacement;
  PressWave                              wave = PressWave::triangle;
  double                                 peak = 0;     ///< [m] or [N]
  double                                 duration = 1; ///< of one cycle or pulse [s]
  int                                    cycles = 1;
  double                                 rest = 0; ///< between pulses [s]
  std::vector<std::pair<double, double>> table;    ///< time [s], displacement [m] or force [N]
};

/// One run at a given resolution; no error estimate. Curves, ledger and readings are those of the last cycle.
/// Throws RunFailed, RunStopped.
Result run_rig(const Case &input, const PressRig &rig, const Resolution &resolution,
               const RunOptions &options);
} // namespace solemech::solver
