// SPDX-License-Identifier: Apache-2.0
// One file with both parts of a pair: blocks whose heading begins with a part, such as [[heel.layer]] and
// [forefoot.plug], are of that part, all others of both. Taken apart into two bench sheets in which every
// line and column stays where it is in the file, so that messages point into it.
#pragma once

#include "tools/language/problem.h"

#include <string>

namespace solemech::tools
{
/// The parts of a shoe, in the order in which a pair has them.
inline constexpr const char *parts_of_pair[] = {"heel", "forefoot"};

/// True when some block is of a part.
bool is_pair_file(const std::string &text);

/// The bench sheet of one part.
std::string sheet_of_part(const std::string &text, const std::string &part);

/// Notes blocks that must be of a part and are not, parts without layers, and entries directly below a part.
void check_pair_file(const std::string &text, const std::string &file, materials::Problems &problems);
} // namespace solemech::tools
