// SPDX-License-Identifier: Apache-2.0
// Where the results of an input go, whether they are there already, and how they are printed.
#pragma once

#include "tools/output/results/run_folder.h"
#include "tools/output/results/run_record.h"
#include "tools/program/run_request.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace solemech::tools
{
/// Where each record of a request goes: results/<label>/<number>; with -o that very folder, or one folder per
/// label inside of it when there are several records.
class ResultPlaces
{
public:
  ResultPlaces(const AnswerWish &wish, std::size_t n_records);

  /// Finished run of the same inputs by the same version, untouched since.
  std::optional<std::filesystem::path> finished(const RunRecord &record) const;

  /// A fresh folder.
  /// @throws solver::ResultsError
  RunFolder fresh(const RunRecord &record) const;

private:
  std::filesystem::path own_folder(const RunRecord &record) const;

  std::optional<std::filesystem::path> output_;
  bool                                 is_alone_;
};

/// True when the summary.txt of a single finished run is the whole answer: not with --set, as the same inputs
/// may have been reached without or by another one.
bool stored_summary_answers(const RunRequest &request);

/// Says on standard error that a run stopped early, and why; false when it came to its end.
/// @param what  the run, for people
bool tell_stopped(const std::string &what, const solver::Result &result);

/// Says on standard error which runs stopped early; true when all came to their end.
bool all_complete(const std::vector<Run> &runs);

/// What the manifest says of a record. An incomplete one, or one that lacks what a run that failed was for,
/// is kept to look at, but its hash is not that of its inputs, so it never answers a later command.
ManifestFacts manifest_facts(const RunRecord &record, bool complete);

/// Prints summaries (single runs side by side, each series as a table) or JSON to standard output, at once:
/// pictures, page and files follow.
void print_answers(const std::vector<RunRecord> &records, const AnswerWish &wish);

/// Text of a file in a finished folder, "" when it cannot be read.
std::string stored_text(const std::filesystem::path &folder, const std::string &name);

/// The same on standard output; what would steer the terminal is not let through.
void print_stored(const std::filesystem::path &folder, const std::string &name);

/// A sentence about the writing to standard error; nothing when it is empty.
void tell_remark(const std::string &remark);

/// "Results in FOLDER", or that they were there already, to standard error; nothing when quiet.
void tell_place(const std::filesystem::path &folder, bool was_there, bool quiet);
} // namespace solemech::tools
