// SPDX-License-Identifier: Apache-2.0
#include "tools/program/trial_run.h"

#include "tools/answers/trial/trial_page.h"
#include "tools/answers/trial/trial_text.h"
#include "tools/output/picture/charts.h"
#include "tools/output/picture/pictures.h"
#include "tools/output/report/report_page.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/compare_run.h"
#include "tools/program/failures.h"
#include "tools/program/print_options.h"
#include "tools/program/record.h"
#include "tools/program/sheet_input.h"
#include "tools/program/sheet_run.h"
#include "tools/program/trial_record.h"

#include <fmt/format.h>

#include <chrono>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// The range as runs, for its picture.
std::string range_picture(const TrialInput &trial, const TrialResult &result, const RangeAnswer &range)
{
  std::vector<Run> runs;
  Series           series{range.quantity, range.unit, {}, {}};
  for (std::size_t i = 0; i < result.range.size(); ++i)
    if (result.range[i].complete)
    {
      runs.push_back({trial.range->cases[i].label, trial.range->cases[i], result.range[i], trial.swaps});
      series.values.push_back(trial.range->values[i]);
      series.groups.emplace_back(trial.swaps.empty() ? as_it_is : after_change);
    }
  return runs.empty() ? "" : series_chart(runs, series);
}

fs::path write_trial(RunFolder &folder, const TrialInput &trial, const TrialResult &result,
                     const RunRecord &record, bool complete)
{
  const auto answer = trial_answer(trial, result, {});
  tell_remark(write_run(folder, record, [&] {
    folder.write("summary.txt", trial_text(answer, {}));
    folder.write("report.html", report::report_html(trial_page(answer, record)));
  }));
  folder.write("data/trial.json", trial_json(trial, result, answer, record.versions, record.hash));
  folder.write("data/trial.csv", rows_csv(answer));
  if (answer.range)
  {
    folder.write("data/range.csv", range_csv(*answer.range));
    draw_script(folder.file("summary.txt").parent_path(), "range.gp",
                range_picture(trial, result, *answer.range));
  }
  return folder.commit(manifest_facts(record, complete));
}

/// Says which sides and which points of the range stopped early; true when there are none.
bool all_complete(const TrialInput &trial, const TrialResult &result)
{
  bool stopped = tell_stopped("the stack before the change", result.now.result);
  if (!trial.swaps.empty())
    stopped = tell_stopped("the stack after the change", result.changed.result) || stopped;
  for (std::size_t i = 0; i < result.range.size(); ++i)
    stopped = tell_stopped(fmt::format("{} = {:.4g} {}", trial.range->address, trial.range->values[i],
                                       trial.range->unit),
                           result.range[i]) ||
              stopped;
  return !stopped;
}

} // namespace

Exit answer_trial(const TrialRequest &given, Job &job)
{
  TrialRequest request = given;
  job.expect(cost_of(request));
  if (const auto sheet = sheet_among({request.name})) // what is changed is the stack that it settles on
  {
    const SettledStack settled = settle_beforehand(*sheet, request.quiet, job);
    if (!settled.complete)
      return Exit::run_failed;
    request.sheet = *sheet;
    request.label = settled.label;
    request.name = settled.file.string();
  }
  const auto               start = std::chrono::steady_clock::now();
  const TrialInput         trial = trial_input(request);
  RunRecord                record = trial_record(trial);
  const auto               finished = finished_trial(request, record);
  std::optional<RunFolder> folder;
  if (!finished) // made before the work begins: a folder that cannot be written should not cost the wait
    folder.emplace(request.output ? RunFolder::create_at(*request.output)
                                  : RunFolder::create(results_root, record.folder));

  const auto        n_calculated = job.n_calculated(), n_from_store = job.n_from_store();
  const TrialResult result = solve_trial(trial, job);
  record.runs.front().result = result.now.result;
  if (record.runs.size() > 1)
    record.runs.back().result = result.changed.result;
  const bool complete = all_complete(trial, result);
  if (!result.now.result.complete || !result.changed.result.complete)
  {
    std::erase_if(record.runs, [](const Run &run) { return !run.result.complete; });
    if (folder) // the other side is kept as it is, for people to look at
      write_finished(*folder, record, request);
    return Exit::run_failed;
  }
  const auto        options = print_options(request.details, lengths_from(request.lengths));
  const auto        answer = trial_answer(trial, result, options);
  const TrialEffort effort{job.n_calculated() - n_calculated, job.n_from_store() - n_from_store,
                           std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count()};
  print_now(request.json ? trial_json(trial, result, answer, record.versions, record.hash)
                         : trial_text(answer, options, effort));
  const auto place =
    finished ? *finished : write_trial(*folder, trial, result, record, complete && !job.failure());
  tell_place(place, finished.has_value(), request.quiet);
  return complete ? Exit::ok : Exit::run_failed;
}
} // namespace solemech::tools
