// SPDX-License-Identifier: Apache-2.0
#include "tools/program/trial_record.h"

#include "tools/language/case_text.h"
#include "tools/language/library.h"
#include "tools/output/results/run_folder.h"
#include "tools/program/inputs.h"
#include "tools/program/places.h"
#include "tools/program/record.h"

namespace solemech::tools
{
TrialInput trial_input(const TrialRequest &request)
{
  const auto        library = materials::Library::load(library_folder());
  const ReadOptions options{{}, {case_folder()}, library.source()};
  return read_trial(request, find_case(request.name, options.case_roots), options);
}

RunRecord trial_record(const TrialInput &trial)
{
  CaseFile file;
  file.label = trial.label;
  file.text = trial.case_text;
  file.sheets = trial.sheets;
  file.cases = {trial.now};
  file.cases.front().label = trial.swaps.empty() ? as_it_is : before_change;
  if (!trial.swaps.empty())
  {
    file.cases.push_back(trial.changed);
    file.cases.back().label = after_change;
  }
  RunRecord record =
    planned_record({trial.path, file}, asked_text(trial, canonical_text), asked_text(trial, answer_text));
  record.label = "trial-" + record.label;
  record.folder = "trial-" + record.folder;
  for (auto &run : record.runs)
    run.changes = trial.settings;
  if (record.runs.size() > 1)
    record.runs.back().changes.insert(record.runs.back().changes.end(), trial.swaps.begin(),
                                      trial.swaps.end());
  return record;
}

std::optional<std::filesystem::path> finished_trial(const TrialRequest &request, const RunRecord &record)
{
  if (!request.output)
    return find_finished(results_root, record.folder, record.hash, answering_version());
  return is_finished(*request.output, record.hash, answering_version()) ? request.output : std::nullopt;
}
} // namespace solemech::tools
