// SPDX-License-Identifier: Apache-2.0
// The one closed path of an SVG drawing as a polygon. Reads what drawing programs write for a traced outline:
// the path data M L H V C S Q T Z, absolute and relative (SVG 1.1, 8.3). Everything that could turn the shape
// into another one unseen (skewed or turned groups, arcs, several paths) is refused with its cure.
#pragma once

#include <array>
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
/// A drawing that cannot be taken: `what()` is the reason.
struct InvalidDrawing : std::runtime_error
{
  InvalidDrawing(const std::string &reason, std::string cure_text, int at_line = 0)
    : std::runtime_error(reason), cure(std::move(cure_text)), line(at_line)
  {
  }
  std::string cure;
  int         line = 0; ///< from 1; 0: the whole drawing
};

/// Points in the order of the path, y downwards, in its own unit. Throws InvalidDrawing.
/// @param most  points at which reading stops
std::vector<std::array<double, 2>> svg_outline(std::string_view text, std::size_t most);

/// The points of path data alone. Throws InvalidDrawing.
std::vector<std::array<double, 2>> path_points(std::string_view data, std::size_t most);
} // namespace solemech::tools
