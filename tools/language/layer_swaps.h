// SPDX-License-Identifier: Apache-2.0
// Carries out the changes of a trial on a completed tree of entries, so that everything that holds for a
// written case (names, units, ranges, checks of parts against each other) holds for the changed one.
#pragma once

#include "tools/language/swap_option.h"

#include <array>

namespace solemech::tools
{
/// What people call a layer that lies in the shoe on the foot side of its sole.
inline constexpr std::array laid_in_names{"insert", "footbed", "sockliner"};

/// Makes the swaps in order. A layer keeps what a swap does not name: a ring round its core, the share of its
/// area. With another material its air unit goes out. A layer called insert, footbed or sockliner that is not
/// there is laid on the foot side; several sheets in one place are called insert, insert-2, ...
void apply_swaps(toml::table &tree, std::vector<Swap> swaps, const std::vector<std::string> &known_materials,
                 materials::Problems &problems);

/// Address of the entry that a range names by its address or, where no other entry is called so, by its last
/// name alone. "" after a slip.
std::string range_address(toml::table &tree, const PlacedText &entry,
                          const std::vector<std::string> &known_materials, materials::Problems &problems);
} // namespace solemech::tools
