// SPDX-License-Identifier: Apache-2.0
// The traced edge of a sole from a file of points (CSV) or a drawing (SVG 1.1, W3C Recommendation 2011,
// chapter 8): one closed path, its curves as short chords. Sizes do not matter, a stated length scales it.
#pragma once

#include "geometry/sole/outline.h"
#include "tools/language/problem.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Most points of a trace that are read; more is a scan of something else.
inline constexpr std::size_t most_read_points = 20000;

/// Two columns of numbers; a heading and lines beginning with # are passed over. Empty after a slip.
/// @param file  name for messages
std::vector<geometry::PlanPoint> read_points(const std::string &file, const std::string &text,
                                             materials::Problems &problems);

/// The one path of a drawing, y upwards. Empty after a slip.
std::vector<geometry::PlanPoint> read_drawing(const std::string &file, const std::string &text,
                                              materials::Problems &problems);
} // namespace solemech::tools
