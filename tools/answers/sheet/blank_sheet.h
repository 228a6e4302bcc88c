// SPDX-License-Identifier: Apache-2.0
// Bench sheets and rig files to fill in: valid as they stand, every number in them invented or left to a
// stated default, with remarks on what to read and with which tool. Default doubts named in the remarks are
// those of reading_reader.cc; a test reads each example in the remarks with that reader.
#pragma once

#include <string>

namespace solemech::tools
{
/// Parts of a shoe that a sheet can be about.
enum class Part { heel, forefoot };

/// Text of a bench sheet: a layer stack, a rig, and readings as remarks to be freed one by one.
std::string blank_sheet(Part part);

/// Text of one file with both parts of a pair (pair_file.h): one bench, the layers and readings of each part.
std::string blank_pair();

/// Text of a rig file with a drop weight: mass, height, shape, guide loss and base.
std::string blank_rig();

/// Says which lines of a sheet or rig file are still marked as invented; empty when none is.
std::string invented_text(const std::string &text);
} // namespace solemech::tools
