// SPDX-License-Identifier: Apache-2.0
// The bench tests that the library's foams and rubbers are read on: press pulse, ball and hardness gauge, all
// of them plain cases of the solver.
// Pulse: 2000 N in 185 ms, force and time of the class returns of midsoles (Hoogkamer et al. 2018,
// Sports Med 48:1009-1019; force and time from memory). Pad and head are ours. Ball: ISO 8307. Gauge: ISO
// 48-4 and JIS K 7312 (from memory), on a block of 50 mm.
#pragma once

#include "materials/gauge.h"
#include "materials/material.h"
#include "solver/case.h"

namespace solemech::tools
{
/// One reading and how far off it may be numerically.
struct BenchReading
{
  double value = 0; ///< share [-], or points of a gauge
  double error = 0; ///< estimated numerical error, the same
};

/// Half-sine force pulse, 2000 N in 185 ms, by a flat head of 60 mm on a pad 30 mm thick. The pad stands out
/// beyond the head by its thickness, so that its free side hardly matters, and is bonded to the table.
solver::Case pulse_case(const materials::Material &material, double accuracy);

/// ISO 8307: steel ball of 16 mm and 16.8 g from 500 mm on a block 50 mm thick, here round and 100 mm wide.
solver::Case ball_case(const materials::Material &material, double accuracy);

/// A gauge on a block 50 mm thick, here round and 100 mm wide, read after 3 s: what a pad of plied pieces
/// reads.
solver::Case gauge_case(const materials::Material &material, const materials::Gauge &gauge, double accuracy);

/// The gauge that a material is read with: Asker C for a foam, Shore A for a rubber.
const materials::Gauge &gauge_for(const materials::Material &material);

/// Loop return of the pulse.  @throws solver::RunFailed
BenchReading pulse_return(const materials::Material &material, double accuracy);

/// Rebound height of the ball over its drop height.  @throws solver::RunFailed
BenchReading ball_rebound(const materials::Material &material, double accuracy);

/// Points of the gauge.  @throws solver::RunFailed
BenchReading gauge_reading(const materials::Material &material, const materials::Gauge &gauge,
                           double accuracy);
} // namespace solemech::tools
