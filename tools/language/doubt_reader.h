// SPDX-License-Identifier: Apache-2.0
// [[settled]] blocks of a case file: numbers that are known with a doubt only, and how they go together.
#pragma once

#include "solver/case.h"
#include "tools/language/entries.h"
#include "tools/language/fields.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Reads the blocks in their order. A number of something that the case does not hold (any more) is let
/// through: it has no effect.
/// @return no doubts at all after a slip, which goes to `problems`
std::vector<solver::Doubt> read_doubts(const std::vector<const toml::table *> &blocks,
                                       materials::Problems                    &problems);

/// The entries of a block; the numbers that it may be about follow from what is described as doubted.
std::vector<materials::Entry> doubt_entries();

/// True when a block is about a number of the rig: another rig has doubts of its own.
bool names_the_rig(const toml::table &settled);

/// The blocks that read_doubts reads, with the digits that it needs; "" for none.
std::string doubts_text(const std::vector<solver::Doubt> &doubts);
} // namespace solemech::tools
