// SPDX-License-Identifier: Apache-2.0
// The answer of a trial as plain text: before, after, what to know; room; range; cautions.
#pragma once

#include "tools/answers/trial/trial_answer.h"

#include <map>
#include <string>

namespace solemech::tools
{
/// How many runs it took, for --details.
struct TrialEffort
{
  std::size_t n_calculated = 0, n_from_store = 0;
  double      seconds = 0;
};

std::string trial_text(const TrialAnswer &answer, const SummaryOptions &options,
                       const TrialEffort &effort = {});

/// The range as a table for spreadsheets, SI beside the value in its own unit.
std::string range_csv(const RangeAnswer &range);

/// The rows as a table for spreadsheets: reading, before or now, after (SI), note.
std::string rows_csv(const TrialAnswer &answer);

constexpr int trial_json_schema = 1;

/// The answer for programs: readings of both sides in SI, trends, room, reserve, range, sentences, cautions.
/// @throws solver::ResultsError when a number is not finite
std::string trial_json(const TrialInput &trial, const TrialResult &result, const TrialAnswer &answer,
                       const std::map<std::string, std::string> &versions, const std::string &hash);
} // namespace solemech::tools
