// SPDX-License-Identifier: Apache-2.0
// The two bench tests that the library's foams are read on: the press pulse that fixes their loss, and the
// ball that is read afterwards. Both are plain cases of the solver.
// Pulse: 2000 N in 185 ms, force and time of the class returns of midsoles (Hoogkamer et al. 2018,
// Sports Med 48:1009-1019; force and time from memory). Pad and head are ours. Ball: ISO 8307.
#pragma once

#include "materials/material.h"
#include "solver/case.h"

namespace solemech::tools
{
/// One reading and how far off it may be numerically.
struct BenchReading
{
  double value = 0; ///< share [-]
  double error = 0; ///< estimated numerical error [-]
};

/// Half-sine force pulse, 2000 N in 185 ms, by a flat head of 60 mm on a pad 30 mm thick. The pad stands out
/// beyond the head by its thickness, so that its free side hardly matters, and is bonded to the table.
solver::Case pulse_case(const materials::Material &material, double accuracy);

/// ISO 8307: steel ball of 16 mm and 16.8 g from 500 mm on a block 50 mm thick, here round and 100 mm wide.
solver::Case ball_case(const materials::Material &material, double accuracy);

/// Loop return of the pulse.  @throws solver::RunFailed
BenchReading pulse_return(const materials::Material &material, double accuracy);

/// Rebound height of the ball over its drop height.  @throws solver::RunFailed
BenchReading ball_rebound(const materials::Material &material, double accuracy);
} // namespace solemech::tools
