// SPDX-License-Identifier: Apache-2.0
// One case as a tree of entries: the case file with its stack and rig files merged in and all changes
// applied. Nodes keep the position where a person wrote them, also when they moved.
#pragma once

#include "tools/language/problem.h"
#include "tools/language/sheet_folder.h"
#include "tools/language/variant.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Takes the [[settled]] numbers of the rig out of a tree; they stand last, so that the others keep their
/// places.
void drop_rig_doubts(toml::table &tree);

/// Merges stack and rig into `tree` and applies `[change]`, then the variant in order. `known_materials` are
/// library names that an address may begin with. A rig given by a change takes the place of the whole bench
/// of the case: its blocks, its `[change]` entries and its `[[settled]]` numbers are left behind.
/// @return address of the entry that was changed last; "" when none was, or after a slip
std::string complete_tree(toml::table &tree, Variant variant, SheetFolder &folder,
                          const std::vector<std::string> &known_materials, materials::Problems &problems);
} // namespace solemech::tools
