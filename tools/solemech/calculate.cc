// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/calculate.h"

#include "solver/result_file.h"
#include "tools/results/write_run.h"
#include "tools/solemech/answers.h"
#include "tools/solemech/in_parallel.h"
#include "tools/solemech/inputs.h"
#include "tools/solemech/progress.h"
#include "tools/solemech/record.h"

#include <fmt/format.h>

#include <numeric>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
/// One record on its way: read back from `finished`, or calculated into `folder`.
struct Task
{
  RunRecord                record;
  std::optional<fs::path>  finished;
  std::optional<RunFolder> folder;
};

/// Results of a finished run, put to the cases they belong to.
void read_back(Task &task)
{
  auto stored = solver::read_result_file(*task.finished / "data" / "results.h5");
  if (stored.runs.size() != task.record.runs.size())
    throw solver::ResultsError(
      fmt::format("'{}' holds {} runs where {} are expected. Remove the folder and run "
                  "the case again.",
                  task.finished->string(), stored.runs.size(), task.record.runs.size()));
  for (std::size_t i = 0; i < stored.runs.size(); ++i)
    task.record.runs[i].result = std::move(stored.runs[i].result);
}

std::vector<Task> plan(const RunRequest &request)
{
  const std::vector<Input> inputs = read_inputs(request.cases, request.settings);
  const ResultPlaces       places(request, inputs.size());
  std::vector<Task>        tasks;
  for (const Input &input : inputs)
  {
    Task &task = tasks.emplace_back(planned_record(input));
    task.finished = places.finished(task.record);
    if (task.finished)
      read_back(task);
    else
      // Made before the work begins: a folder that cannot be written should not cost the wait.
      task.folder.emplace(places.fresh(task.record));
  }
  return tasks;
}

/// Solves every run that is not there yet.
void solve_all(std::vector<Task> &tasks, const RunRequest &request, const Solve &solve,
               const std::atomic<bool> &interrupted)
{
  std::vector<Run *> runs;
  for (Task &task : tasks)
    if (!task.finished)
      for (Run &run : task.record.runs)
        runs.push_back(&run);

  Progress                         progress(progress_on_standard_error(), request.quiet);
  std::vector<std::atomic<double>> done(runs.size());
  const auto                       total = [&] {
    return std::accumulate(done.begin(), done.end(), 0.0) / static_cast<double>(done.size());
  };
  in_parallel(runs.size(), std::thread::hardware_concurrency(), [&](std::size_t i) {
    if (interrupted)
      return;
    runs[i]->result = solve(runs[i]->setup, [&](double fraction, const char *what) {
      done[i] = fraction;
      progress.update(total(), fmt::format("{}: {}", runs[i]->label, what));
      return !interrupted;
    });
    done[i] = 1;
  });
}

/// Says which runs stopped early; true when all came to their end.
bool all_complete(const RunRecord &record)
{
  bool complete = true;
  for (const Run &run : record.runs)
    if (!run.result.complete)
    {
      fmt::print(stderr, "solemech: {} stopped before its end: {}\n", run.label, run.result.stop_reason);
      complete = false;
    }
  return complete;
}

/// Writes a calculated record; an incomplete one is kept to look at, but never answers a later run.
fs::path write(Task &task, bool complete)
{
  for (const std::string &remark : write_run(*task.folder, task.record))
    fmt::print(stderr, "solemech: {}\n", remark);
  return task.folder->commit(
    {task.record.label, complete ? task.record.hash : "incomplete", task.record.versions});
}
} // namespace

Exit calculate(const RunRequest &request, const Solve &solve, const std::atomic<bool> &interrupted)
{
  std::vector<Task> tasks = plan(request);
  solve_all(tasks, request, solve, interrupted);
  if (interrupted)
  {
    fmt::print(stderr, "solemech: interrupted, nothing was written.\n");
    return Exit::interrupted;
  }

  Exit                   exit = Exit::ok;
  std::vector<RunRecord> records;
  for (Task &task : tasks)
  {
    const bool complete = all_complete(task.record);
    if (!complete)
      exit = Exit::run_failed;
    const bool     was_there = task.finished.has_value();
    const fs::path folder = was_there ? *task.finished : write(task, complete);
    tell_place(folder, was_there, request);
    records.push_back(std::move(task.record));
  }
  print_answers(records, request);
  return exit;
}
} // namespace solemech::tools
