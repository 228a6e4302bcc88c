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

/// Under a table of readings.
inline constexpr const char *verdict_words = "  The verdict compares what you measured with what the model "
                                             "says without this reading, from all the others;\n"
                                             "  settled is what it says with all of them.\n";

/// Readings as they come in the sheet, held-out ones too.
std::vector<ComparedRow> reading_rows_of(const SettledSheet &answer);

/// What was asked, then the unknowns; of a pair those of the rod stand apart.
enum class Numbers { all, of_stack, of_rod };
std::vector<SettledRow> settled_rows(const Sheet &sheet, const SettledSheet &answer,
                                     Numbers which = Numbers::all);

/// The best few of each unknown layer.
std::vector<FitRow> fit_rows(const SettledSheet &answer);

/// What the fit leaves open, and what it says of readings that do not go together.
std::vector<std::string> fit_remarks(const settle::Settled &settled);

/// Numbers of a sheet that are asked back.
std::vector<std::string> questions_to_person(const Sheet &sheet);

/// What was kept and taken for granted in a sheet.
std::vector<std::string> sheet_remarks(const Sheet &sheet);

/// All of them, each sentence once.
std::vector<std::string> settled_remarks(const Sheet &sheet, const SettledSheet &answer);

/// Table of the readings beside the predictions, under a heading; "" when there are none.
std::string readings_table(const std::vector<ComparedRow> &rows, const std::string &heading);

/// Lines "name   value (was ...)"; without what was before for a prediction.
std::string numbers_text(const std::vector<SettledRow> &rows, bool is_predicted);

/// Library materials that could be in the place of unknown ones, under a heading; "" when there are none.
std::string fits_text(const SettledSheet &answer);

/// Readings beside predictions, what they settle, foams that fit, what stays open.
std::string settled_text(const Sheet &sheet, const SettledSheet &answer);
} // namespace solemech::tools
