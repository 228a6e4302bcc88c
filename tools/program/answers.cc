// SPDX-License-Identifier: Apache-2.0
#include "tools/program/answers.h"

#include "tools/language/file_text.h"
#include "tools/language/shown_text.h"
#include "tools/output/report/record_summary.h"
#include "tools/output/results/json_output.h"
#include "tools/program/failures.h"
#include "tools/program/print_options.h"
#include "tools/program/record.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
bool is_changed(const RunRecord &record)
{
  return !record.runs.empty() && !record.runs.front().changes.empty();
}
} // namespace

ResultPlaces::ResultPlaces(const AnswerWish &wish, std::size_t n_records)
  : output_(wish.output), is_alone_(n_records == 1)
{
}

fs::path ResultPlaces::own_folder(const RunRecord &record) const
{
  return is_alone_ ? *output_ : *output_ / folder_name(record.label);
}

std::optional<fs::path> ResultPlaces::finished(const RunRecord &record) const
{
  if (!output_)
  {
    const auto own = find_finished(results_root, record.folder, record.hash, answering_version());
    return own ? own
               : find_finished(results_root, record.folder + changed_mark, record.hash, answering_version());
  }
  const fs::path folder = own_folder(record);
  return is_finished(folder, record.hash, answering_version()) ? std::optional(folder) : std::nullopt;
}

RunFolder ResultPlaces::fresh(const RunRecord &record) const
{
  return output_ ? RunFolder::create_at(own_folder(record))
                 : RunFolder::create(results_root, record.folder + (is_changed(record) ? changed_mark : ""));
}

bool tell_stopped(const std::string &what, const solver::Result &result)
{
  if (!result.complete)
    fmt::print(stderr, "solemech: {} stopped early: {}\n", what, result.stop_reason);
  return !result.complete;
}

bool all_complete(const std::vector<Run> &runs)
{
  bool complete = true;
  for (const Run &run : runs)
    complete = !tell_stopped(run.label, run.result) && complete;
  return complete;
}

ManifestFacts manifest_facts(const RunRecord &record, bool complete)
{
  return {record.label, complete ? record.hash : "incomplete", record.versions};
}

bool stored_summary_answers(const RunRequest &request)
{
  return request.cases.size() == 1 && request.settings.empty() && !request.json && !request.details &&
         request.lengths == "mm";
}

void print_answers(const std::vector<RunRecord> &records, const AnswerWish &wish)
{
  if (wish.json)
  {
    print_now(json_text(records) + "\n");
    return;
  }
  const SummaryOptions options = print_options(wish.details, lengths_from(wish.lengths));
  std::vector<Run>     side_by_side;
  for (const RunRecord &record : records)
    if (!record.series)
      side_by_side.insert(side_by_side.end(), record.runs.begin(), record.runs.end());
  std::string text = side_by_side.empty() ? "" : summary_text(side_by_side, options);
  for (const RunRecord &record : records)
    if (record.series)
      text += (text.empty() ? "" : "\n") + report::record_summary(record, options);
  print_now(text);
}

std::string stored_text(const fs::path &folder, const std::string &name)
{
  constexpr std::size_t largest = 100'000'000; // bytes
  return materials::file_text_below(folder, name, largest).text;
}

void print_stored(const fs::path &folder, const std::string &name)
{
  fmt::print("{}", materials::shown_text(stored_text(folder, name), true));
}

void tell_remark(const std::string &remark)
{
  if (!remark.empty())
    fmt::print(stderr, "solemech: {}\n", remark);
}

void tell_place(const fs::path &folder, bool was_there, bool quiet)
{
  if (quiet)
    return;
  // A folder below the current one is told as the person would type it.
  const fs::path relative = folder.lexically_proximate(fs::current_path());
  const bool     is_below = folder.is_absolute() && *relative.begin() != "..";
  fmt::print(stderr, "{} {}{}\n", was_there ? "already computed, results in" : "results in",
             (is_below ? relative : folder).string(),
             fs::is_regular_file(folder / "report.html") ? " (open report.html)" : "");
}
} // namespace solemech::tools
