// SPDX-License-Identifier: Apache-2.0
// Bench sheets and rig files to fill in: valid as they stand, every number in them invented or left to a
// stated default, with remarks on what to read and with which tool. Default doubts named in the remarks are
// those of reading_reader.cc; a test reads each example in the remarks with that reader.
#pragma once

#include <string>
#include <vector>

namespace solemech::tools
{
/// Parts of a shoe that a sheet can be about.
enum class Part { heel, forefoot };

/// Text of a bench sheet: a layer stack, a rig, and readings as remarks to be freed one by one.
std::string blank_sheet(Part part);

/// Text of a rig file with a drop weight: mass, height, shape, guide loss and base.
std::string blank_rig();

/// Numbers, from 1, of the lines of a sheet or rig file whose entry is still marked as invented.
std::vector<int> lines_still_invented(const std::string &text);
} // namespace solemech::tools
