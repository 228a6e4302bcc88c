// SPDX-License-Identifier: Apache-2.0
// From a request to the checked stacks of a trial: as they are now, with the change, and over the range.
#pragma once

#include "tools/answers/trial/trial_request.h"
#include "tools/language/case_file.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
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

/// Everything that the answer depends on, as text: two trials with the same text have the same answer.
std::string trial_canonical_text(const TrialInput &trial);
} // namespace solemech::tools
