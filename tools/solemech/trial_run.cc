// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/trial_run.h"

#include "tools/explore/run_many.h"
#include "tools/picture/charts.h"
#include "tools/picture/pictures.h"
#include "tools/report/report_page.h"
#include "tools/results/write_run.h"
#include "tools/solemech/answers.h"
#include "tools/solemech/print_options.h"
#include "tools/solemech/progress.h"
#include "tools/solemech/record.h"
#include "tools/solemech/sheet_input.h"
#include "tools/solemech/sheet_run.h"
#include "tools/solemech/trial_record.h"
#include "tools/trial/trial_page.h"
#include "tools/trial/trial_text.h"

#include <fmt/format.h>

#include <chrono>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// The person stopped the trial.
struct Interrupted
{
};

/// Runs the batches of a trial and keeps count. How many batches there will be is not known before: each is
/// taken to be half of what is left.
class Batches
{
public:
  Batches(const TrialRequest &request, const Solve &solve, const std::atomic<bool> &interrupted)
    : solve_(solve), interrupted_(interrupted), store_(RunStore::default_folder, answering_version()),
      progress_(progress_on_standard_error(), request.quiet)
  {
  }

  std::vector<solver::Result> run(const std::vector<solver::Case> &cases, bool for_people,
                                  const std::string &what)
  {
    SolveWish wish;
    wish.pictures = wish.estimate_error = for_people;
    const double begin = done_, share = 0.5 * (1 - done_);
    const auto   tell = [&](double fraction, const std::string &) {
      progress_.update(begin + share * fraction, what);
    };
    auto many = run_many(cases, wish, solve_, &store_, tell, interrupted_);
    if (interrupted_)
      throw Interrupted();
    done_ = begin + share;
    effort.n_calculated += many.n_calculated;
    effort.n_from_store += many.n_from_store;
    return std::move(many.results);
  }

  TrialEffort effort;

private:
  const Solve             &solve_;
  const std::atomic<bool> &interrupted_;
  RunStore                 store_;
  Progress                 progress_;
  double                   done_ = 0;
};

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
      series.groups.emplace_back(trial.swaps.empty() ? "as it is" : "with the change");
    }
  return runs.empty() ? "" : series_chart(runs, series);
}

fs::path write_trial(RunFolder &folder, const TrialInput &trial, const TrialResult &result,
                     const RunRecord &record)
{
  const auto answer = trial_answer(trial, result, {});
  for (const std::string &remark : write_run(folder, record))
    fmt::print(stderr, "solemech: {}\n", remark);
  folder.write("summary.txt", trial_text(answer, {}));
  folder.write("report.html", report::report_html(trial_page(answer, record)));
  folder.write("data/trial.json", trial_json(trial, result, answer, record.versions, record.hash));
  folder.write("data/trial.csv", rows_csv(answer.rows));
  if (answer.range)
  {
    folder.write("data/range.csv", range_csv(*answer.range));
    draw_script(folder.file("summary.txt").parent_path(), "range.gp",
                range_picture(trial, result, *answer.range));
  }
  return folder.commit({record.label, record.hash, record.versions});
}

/// Says which side stopped early; true when both came to their end.
bool both_complete(const TrialResult &result)
{
  const std::pair<const char *, const TrialSide *> sides[] = {{"the stack as it is now", &result.now},
                                                              {"the stack with the change", &result.changed}};
  bool                                             complete = true;
  for (const auto &[name, side] : sides)
    if (!side->result.complete)
    {
      fmt::print(stderr, "solemech: {} stopped before its end: {}\n", name, side->result.stop_reason);
      complete = false;
    }
  return complete;
}
} // namespace

Exit answer_trial(const TrialRequest &given, const Solve &solve, const std::atomic<bool> &interrupted)
try
{
  TrialRequest request = given;
  if (const auto sheet = sheet_among({request.name})) // what is changed is the stack that it settles on
  {
    SettledStack settled;
    if (const auto how = settle_beforehand(*sheet, request.quiet, solve, interrupted, settled);
        how != Exit::ok)
      return how;
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
                                  : RunFolder::create(results_root, record.label));

  Batches           batches(request, solve, interrupted);
  const TrialResult result =
    solve_trial(trial, [&](const auto &cases, bool for_people, const std::string &what) {
      return batches.run(cases, for_people, what);
    });
  if (!both_complete(result))
    return Exit::run_failed;
  record.runs.front().result = result.now.result;
  if (record.runs.size() > 1)
    record.runs.back().result = result.changed.result;
  const auto place = finished ? *finished : write_trial(*folder, trial, result, record);

  RunRequest as_run;
  as_run.quiet = request.quiet;
  tell_place(place, finished.has_value(), as_run);
  const auto options = print_options(request.details, lengths_from(request.lengths));
  const auto answer = trial_answer(trial, result, options);
  batches.effort.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  fmt::print("{}", request.json ? trial_json(trial, result, answer, record.versions, record.hash)
                                : trial_text(answer, options, batches.effort));
  return Exit::ok;
}
catch (const Interrupted &)
{
  fmt::print(stderr,
             "solemech: interrupted, nothing was written; finished runs are kept for the next time.\n");
  return Exit::interrupted;
}
} // namespace solemech::tools
