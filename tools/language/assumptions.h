// SPDX-License-Identifier: Apache-2.0
// What a case leaves to the program: the entries it does not give, with the values that are taken instead.
#pragma once

#include <toml++/toml.h>

#include <string>
#include <vector>

namespace solemech::tools
{
/// "drop.friction 0", "unit.packed_share 10 %", ...: entries with a default that neither the case file nor
/// its stack, rig and changes give, in the order of the schema. Own materials are left out: they follow the
/// library.
/// @param tree  of a completed case
std::vector<std::string> assumed_entries(const toml::table &tree);
} // namespace solemech::tools
