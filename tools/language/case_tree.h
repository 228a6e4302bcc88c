// SPDX-License-Identifier: Apache-2.0
// One case as a tree of entries: the case file with its stack and rig files merged in and all changes
// applied. Nodes keep the position where a person wrote them, also when they moved.
#pragma once

#include "tools/language/addresses.h"
#include "tools/language/sheet_folder.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Change from the command line, `insert.thickness=2 mm`. A slip goes to `problems` and gives no address.
Change change_from_option(const std::string &option, materials::Problems &problems);

/// Splits an address at its dots.
std::vector<std::string> split_address(const std::string &address);

/// Takes the [[settled]] numbers of the rig out of a tree; they stand last, so that the others keep their
/// places.
void drop_rig_doubts(toml::table &tree);

/// Merges stack and rig into `tree` and applies `[change]`, then `changes` in order. `known_materials` are
/// library names that an address may begin with. A rig given by a change takes the place of the whole bench
/// of the case: its blocks, its `[change]` entries and its `[[settled]]` numbers are left behind.
void complete_tree(toml::table &tree, std::vector<Change> changes, SheetFolder &folder,
                   const std::vector<std::string> &known_materials, materials::Problems &problems);
} // namespace solemech::tools
