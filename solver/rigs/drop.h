// SPDX-License-Identifier: Apache-2.0
// Drop rig and ball rebound: a free weight falls on the stack, once or several times with rests between.
#pragma once

#include "solver/tup.h"

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

/// Weight falling on a guided rod, or an instrumented falling mass.
struct DropRig
{
  Tup    tup;
  double mass = 0;            ///< [kg]
  double height = 0;          ///< fall to first touch [m]; the reader turns an energy into a height
  double guide_loss = 0;      ///< share of the energy lost on each way [-]
  int    hits = 1;            ///< recorded hits
  int    discarded = 0;       ///< hits before, not counted
  double rest = 30;           ///< between hits [s]
  bool   conditioned = false; ///< repeat until the return changes by less than 0.2 points
  double base_mass = 0;       ///< of the block under the stack [kg]; 0: rigid
  double base_stiffness = 0;  ///< between block and ground [N/m]
  double base_damping = 0;    ///< [N s/m]
};

/// One run at a given resolution; no error estimate. Readings are means over the counted hits, curves, ledger
/// and pictures those of the last one. Throws RunFailed, RunStopped.
Result run_rig(const Case &input, const DropRig &rig, const Resolution &resolution,
               const RunOptions &options);
} // namespace solemech::solver
