// SPDX-License-Identifier: Apache-2.0
#include "tools/program/calculate.h"

#include "solver/in_parallel.h"
#include "tools/output/write_run.h"
#include "tools/program/answers.h"
#include "tools/program/failures.h"
#include "tools/program/inputs.h"
#include "tools/program/read_back.h"
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
/// Where a record goes: read back from `finished`, or calculated into `folder`.
struct Place
{
  std::optional<fs::path>  finished;
  std::optional<RunFolder> folder;
};

struct Plan
{
  std::vector<RunRecord> records;
  std::vector<Place>     places; ///< of each record
};

bool has_doubts(const RunRecord &record)
{
  return std::ranges::any_of(record.runs, [](const Run &run) { return !run.setup.doubts.empty(); });
}

Plan plan_of(const RunRequest &request)
{
  const std::vector<Input> inputs = read_inputs(request.cases, request.settings);
  const ResultPlaces       places(request, inputs.size());
  Plan                     plan;
  for (const Input &input : inputs)
  {
    RunRecord &record = plan.records.emplace_back(planned_record(input));
    Place     &place = plan.places.emplace_back();
    place.finished = places.finished(record);
    if (place.finished)
      read_back(record, *place.finished);
    else
    {
      for (Run &run : record.runs)
        run.assumed = input.file.assumed;
      // Made before the work begins: a folder that cannot be written should not cost the wait.
      place.folder.emplace(places.fresh(record));
    }
  }
  return plan;
}

/// Solves every run that is not there yet.
void solve_all(Plan &plan, Job &job)
{
  std::vector<Run *>     runs;
  std::vector<WantedRun> list;
  for (std::size_t i = 0; i < plan.records.size(); ++i)
    if (!plan.places[i].finished)
      for (Run &run : plan.records[i].runs)
      {
        runs.push_back(&run);
        list.push_back({run.setup, {}});
      }
  // One bad case does not cost the others, those that were there already included.
  if (plan.records.size() == 1 && runs.size() == 1)
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
  fs::path           folder; ///< empty: it could not be written
  std::string        remark;
  std::exception_ptr fault;
};

/// Writes what was calculated, several records at once, in their order. One that cannot be written does not
/// cost the others. A run that failed may have been one at an end of the ± of any case that has doubts.
std::vector<Written> write_all(Plan &plan, const std::vector<bool> &complete, const Job &job)
{
  std::vector<Written> written(plan.records.size());
  solver::in_parallel(plan.records.size(), [&](std::size_t i) {
    const RunRecord &record = plan.records[i];
    Place           &place = plan.places[i];
    if (place.finished)
    {
      written[i].folder = *place.finished;
      return;
    }
    try
    {
      written[i].remark = write_run(*place.folder, record);
      const bool lacks_ends = job.failure() && has_doubts(record);
      written[i].folder = place.folder->commit(manifest_facts(record, complete[i] && !lacks_ends));
    }
    catch (...)
    {
      if (plan.records.size() == 1)
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
    if (told.insert(each.remark).second)
      tell_remark(each.remark);
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
  Plan plan = plan_of(request);
  solve_all(plan, job);

  std::vector<bool> complete;
  for (const RunRecord &record : plan.records)
    complete.push_back(all_complete(record.runs));
  print_answers(plan.records, request);

  const auto written = write_all(plan, complete, job);
  const Exit writing = explain_writing(written);
  for (std::size_t i = 0; i < written.size(); ++i)
    if (!written[i].fault)
      tell_place(written[i].folder, plan.places[i].finished.has_value(), request.quiet);
  if (writing != Exit::ok)
    return writing;
  return std::all_of(complete.begin(), complete.end(), std::identity()) ? Exit::ok : Exit::run_failed;
}
} // namespace solemech::tools
