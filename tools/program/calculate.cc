// SPDX-License-Identifier: Apache-2.0
#include "tools/program/calculate.h"

#include "solver/in_parallel.h"
#include "solver/results/result_file.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/failures.h"
#include "tools/program/inputs.h"
#include "tools/program/record.h"
#include "tools/program/sheet_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <set>

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

  bool has_doubts() const
  {
    return std::ranges::any_of(record.runs, [](const Run &run) { return !run.setup.doubts.empty(); });
  }
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
    {
      for (Run &run : task.record.runs)
        run.assumed = input.file.assumed;
      // Made before the work begins: a folder that cannot be written should not cost the wait.
      task.folder.emplace(places.fresh(task.record));
    }
  }
  return tasks;
}

/// Solves every run that is not there yet.
void solve_all(std::vector<Task> &tasks, Job &job)
{
  std::vector<Run *>     runs;
  std::vector<WantedRun> list;
  for (Task &task : tasks)
    if (!task.finished)
      for (Run &run : task.record.runs)
      {
        runs.push_back(&run);
        list.push_back({run.setup, {}});
      }
  // One bad case does not cost the others, those that were there already included.
  if (tasks.size() == 1 && runs.size() == 1)
    runs.front()->result = job.run_alone(list.front());
  else
  {
    auto results = job.run(list);
    for (std::size_t i = 0; i < runs.size(); ++i)
      runs[i]->result = std::move(results[i]);
  }
}

struct Written
{
  fs::path                 folder; ///< empty: it could not be written
  std::vector<std::string> remarks;
  std::exception_ptr       fault;
};

/// Writes what was calculated, several records at once, in their order. One that cannot be written does not
/// cost the others. A run that failed may have been one at an end of the ± of any case that has doubts.
std::vector<Written> write_all(std::vector<Task> &tasks, const std::vector<bool> &complete, const Job &job)
{
  std::vector<Written> written(tasks.size());
  solver::in_parallel(tasks.size(), [&](std::size_t i) {
    Task &task = tasks[i];
    if (task.finished)
    {
      written[i].folder = *task.finished;
      return;
    }
    try
    {
      written[i].remarks = write_run(*task.folder, task.record);
      const bool lacks_ends = job.failure() && task.has_doubts();
      written[i].folder = task.folder->commit(manifest_facts(task.record, complete[i] && !lacks_ends));
    }
    catch (...)
    {
      if (tasks.size() == 1)
        throw;
      written[i].fault = std::current_exception();
    }
  });
  return written;
}

/// Says what is to be said of the writing. @return what its faults amount to
Exit explain_writing(const std::vector<Written> &written)
{
  std::set<std::string> told;
  Exit                  exit = Exit::ok;
  for (const Written &each : written)
  {
    for (const std::string &remark : each.remarks)
      if (told.insert(remark).second)
        fmt::print(stderr, "solemech: {}\n", remark);
    try
    {
      if (each.fault)
        std::rethrow_exception(each.fault);
    }
    catch (const std::exception &fault)
    {
      exit = explain(fault);
    }
  }
  return exit;
}
} // namespace

Exit calculate(const RunRequest &request, Job &job)
{
  if (const auto sheet = answer_sheet(request, job))
    return *sheet;
  std::vector<Task> tasks = plan(request);
  solve_all(tasks, job);

  std::vector<bool> complete;
  for (const Task &task : tasks)
    complete.push_back(all_complete(task.record.runs));
  const auto written = write_all(tasks, complete, job);
  const Exit writing = explain_writing(written);

  std::vector<RunRecord> records;
  for (std::size_t i = 0; i < tasks.size(); ++i)
  {
    if (!written[i].fault)
      tell_place(written[i].folder, tasks[i].finished.has_value(), request.quiet);
    records.push_back(std::move(tasks[i].record));
  }
  print_answers(records, request);
  if (writing != Exit::ok)
    return writing;
  return std::all_of(complete.begin(), complete.end(), std::identity()) ? Exit::ok : Exit::run_failed;
}
} // namespace solemech::tools
