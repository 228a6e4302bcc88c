// SPDX-License-Identifier: Apache-2.0
// Hardness gauge on a stack: a rigid tip on a spring goes in until the stack holds it; the reading is what is
// left of the tip's travel, H = 100 (1 - depth/travel) where F_stack(depth) = F_spring(H). Inertia is left
// out; the foot of the gauge is not modelled. Layers are listed from the gauge down. A tip sticks to what it
// touches unless its striker has a friction below 0.8 (0: not given).
#pragma once

#include "solver/tup.h"

#include <string>

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

/// Hardness gauge set onto the stack: its spring holds the tip, and the reading follows from the depth.
struct DurometerRig
{
  materials::Gauge gauge = materials::shore_a_gauge;
  Tup              tup = gauge_tip(gauge);
  double           set_on_time = 1; ///< in which the tip goes in [s]
  double           read_after = 3;  ///< from there to the reading [s]
  double           wanted = 0;      ///< reading for which the modulus is sought [points]; 0: none
};

/// One run at a given resolution; no error estimate. Throws RunFailed, RunStopped.
Result run_rig(const Case &input, const DurometerRig &rig, const Resolution &resolution,
               const RunOptions &options);

/// What to say of a reading outside of the gauge's reliable range, with the scale to use; "" inside.
std::string unreliable_reading(materials::HardnessScale scale, double reading);
} // namespace solemech::solver
