// SPDX-License-Identifier: Apache-2.0
// What readings settled, as tables of a page.
#pragma once

#include "tools/answers/sheet/sheet_words.h"
#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// How many readings agree, in a sentence.
std::string agreement_sentence(const std::vector<ComparedRow> &readings);

/// Readings beside the model (unless there are none), what they settle, which library material it could be.
/// @param part  "heel", before the headings of one of several sheets; may be empty
std::vector<report::TableBlock> settled_tables(const Sheet &sheet, const SettledSheet &answer,
                                               const std::string &part = "", Numbers which = Numbers::all);
} // namespace solemech::tools
