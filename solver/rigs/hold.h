// SPDX-License-Identifier: Apache-2.0
// Hold: a squeeze or a load comes on, stands for minutes to days, goes, and the stack rests; inertia is left
// out. Steps grow with the time since the load last changed, so that every decade of time has as many.
#pragma once

#include "solver/tup.h"

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

/// Kept squeezed or under a load for a long time, then let go and left to rest.
struct HoldRig
{
  static constexpr double mesh = 1.125; ///< finer by this than that of a blow, as of a press

  Tup    tup;
  double squeeze = 0;          ///< over the height of the stack [-]; 0: held by a load
  double load = 0;             ///< [N]; 0: held at a squeeze
  double ramp = 1;             ///< in which it comes on, and goes again [s]
  double duration = 22 * 3600; ///< of the hold [s]
  double rest = 30 * 60;       ///< from letting go to the reading [s]

  bool is_under_load() const { return load > 0; }
};

/// One run at a given resolution; no error estimate. Throws RunFailed, RunStopped.
Result run_rig(const Case &input, const HoldRig &rig, const Resolution &resolution,
               const RunOptions &options);
} // namespace solemech::solver
