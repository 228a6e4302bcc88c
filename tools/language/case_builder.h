// SPDX-License-Identifier: Apache-2.0
// Turns a completed tree of entries into a resolved Case, entry by entry along the schema.
#pragma once

#include "solver/case.h"
#include "tools/language/case_tree.h"
#include "tools/language/material_reader.h"

namespace solemech::tools
{
/// The case; not to be used when `problems` got longer. Label, title and note are the caller's.
solver::Case build_case(const toml::table &tree, const materials::MaterialSource &library,
                        SheetFolder &folder, materials::Problems &problems);
} // namespace solemech::tools
