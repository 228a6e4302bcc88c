// SPDX-License-Identifier: Apache-2.0
// Outlines of the parts of a mesh of nine-node cells: the cell sides that no neighbour of the same part
// shares, chained to closed loops of node numbers. The stuff lies to the left, so outer loops turn left and
// holes turn right.
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <vector>

namespace solemech::tools
{
using NineNodeCell = std::array<std::size_t, 9>; ///< 3 x 3 node numbers, left to right, then upwards

/// Loops round the cells whose part `belongs` picks. `part` holds one number a cell.
std::vector<std::vector<std::size_t>> boundary_loops(const std::vector<NineNodeCell> &cells,
                                                     const std::vector<int>          &part,
                                                     const std::function<bool(int)>  &belongs);
} // namespace solemech::tools
