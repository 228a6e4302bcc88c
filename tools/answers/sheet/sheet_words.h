// SPDX-License-Identifier: Apache-2.0
// What a bench sheet says before and after it was settled, in words of the bench.
#pragma once

#include "tools/answers/sheet/settle_sheet.h"
#include "tools/answers/sheet/value_words.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Ready texts of one reading, of one settled number, of one library material in the place of an unknown one.
struct ComparedRow
{
  std::string name, measured, without_it, settled, verdict;
};
struct SettledRow
{
  std::string name, now, before, remark;
};
struct FitRow
{
  std::string layer, material, misfit, word;
};

/// What is said where no reading is there to settle on.
inline constexpr const char *prediction_words =
  "A prediction from assumed values: the sheet has no reading to fit them to, so the bands are wide.";

/// Readings as they come in the sheet, held-out ones too.
std::vector<ComparedRow> reading_rows_of(const SettledSheet &answer);

/// What was asked, then the unknowns.
std::vector<SettledRow> settled_rows(const Sheet &sheet, const SettledSheet &answer);

/// The best few of each unknown layer.
std::vector<FitRow> fit_rows(const SettledSheet &answer);

/// What stays open, what was kept and what was taken for granted.
std::vector<std::string> settled_remarks(const Sheet &sheet, const SettledSheet &answer);

/// Readings beside predictions, what they settle, foams that fit, what stays open.
std::string settled_text(const Sheet &sheet, const SettledSheet &answer);
} // namespace solemech::tools
