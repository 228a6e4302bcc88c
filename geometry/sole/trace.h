// SPDX-License-Identifier: Apache-2.0
// An outline drawn round a sole: points in order, x roughly towards the toe, y to the lateral side. It is
// laid on its longest line, heel centre to toe tip, and thinned to points a spline bears.
#pragma once

#include "geometry/sole/outline.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::geometry
{
inline constexpr std::size_t least_trace_points = 24, most_trace_points = 5000;

/// Why a trace is no outline of a sole, and what to do; nothing: it is one.
struct TraceFlaw
{
  std::string reason, cure;
};
std::optional<TraceFlaw> trace_flaw(const std::vector<PlanPoint> &points);

/// @param length  it is scaled to this length [m]; 0: it is as drawn, in metres
/// Throws InvalidGeometry when it has a flaw.
Outline traced_outline(const std::vector<PlanPoint> &points, double length);
} // namespace solemech::geometry
