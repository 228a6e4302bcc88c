// SPDX-License-Identifier: Apache-2.0
// Where a line that bounds a body meets itself: its segments are compared in pairs, two blocks of segments at
// a time, and blocks whose boxes lie apart are passed over, so that a line without folds costs little more
// than its length. Distance of two segments: zero if they cross, else the least of the four distances from an
// end to the other segment (plane geometry).
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <span>

namespace solemech::geometry
{
/// Two segments of a line that meet. Segment i runs from point i to point i + 1.
struct Meeting
{
  std::size_t           first = 0, second = 0; ///< first < second
  std::array<double, 2> place{};               ///< halfway between the nearest points of the two
};

/// The first pair, in the order of the line, whose distance is at most `closeness` times the shortest of:
/// either segment, and the way along the line from one to the other. Neighbours, which share a point, are
/// never a pair.
/// @param line       points of an open line; repeat the first one at the end to close it (the two segments at
/// the
///                   seam count as neighbours then)
/// @param closeness  0: only where the line touches or crosses itself
/// @param may_meet   pairs for which it says true are passed over
std::optional<Meeting> find_meeting(std::span<const std::array<double, 2>> line, double closeness,
                                    const std::function<bool(std::size_t, std::size_t)> &may_meet = {});
} // namespace solemech::geometry
