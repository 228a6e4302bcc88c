// SPDX-License-Identifier: Apache-2.0
// From a request to the checked stacks of a trial: before, after the change, and over the range.
#pragma once

#include "tools/answers/trial/trial_request.h"
#include "tools/language/case_file.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// What the two sides of a trial are called, wherever they are shown; where nothing is changed there is only
/// the stack as it is now.
inline constexpr const char *before_change = "before", *after_change = "after", *as_it_is = "now";

/// One entry over a range, on the changed stack.
struct TrialRange
{
  std::string               address; ///< "unit.gauge_pressure"
  std::string               unit;    ///< as written
  std::vector<double>       values;  ///< rising, in that unit
  std::vector<solver::Case> cases;   ///< one a value
};

struct TrialInput
{
  std::filesystem::path     path;      ///< of the case file
  std::string               label;     ///< of the case; the results are called trial-<label>
  std::string               case_text; ///< of the file, with everything asked for in comments below
  std::vector<NamedFile>    sheets;    ///< files that it names
  std::vector<std::string>  settings;  ///< of both sides, as told to people
  std::vector<std::string>  swaps;     ///< as told to people; empty: only the range is asked for
  solver::Case              now, changed;
  std::optional<TrialRange> range;
  std::optional<double>     player_mass; ///< [kg]
};

/// Reads the case three times: as it is, with the swaps, with the range on top.
/// @param path     of the case file
/// @param options  library and case folders
/// @throws materials::CaseError with every slip of the file and of the options at once
TrialInput read_trial(const TrialRequest &request, const std::filesystem::path &path,
                      const ReadOptions &options);

/// What is asked, as text; `text_of` a case is one of those of case_text.h. Two trials of the same text, with
/// that of answers, have the same answer.
std::string asked_text(const TrialInput &trial, std::string (*text_of)(const solver::Case &));
} // namespace solemech::tools
