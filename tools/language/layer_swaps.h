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

/// Makes one swap. A layer keeps what it does not name: a ring round its core, the share of its area. With
/// another material its air unit goes out. A layer called insert, footbed or sockliner that is not there is
/// laid on the foot side; several sheets in one place are called insert, insert-2, ...
void swap_layers(toml::table &tree, const LayerSwap &swap, materials::Problems &problems);
} // namespace solemech::tools
