// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/sheet_settling.h"

#include "materials/library.h"
#include "tools/explore/run_many.h"
#include "tools/results/run_folder.h"
#include "tools/solemech/places.h"
#include "tools/solemech/record.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
Sheet settleable_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings)
{
  const auto          library = materials::Library::load(library_folder());
  const ReadOptions   options{settings, {case_folder()}, library.source()};
  auto                sheet = read_sheet(path, options);
  materials::Problems problems;
  if (sheet.readings.empty())
    problems.add({sheet.path.string(), 0, 0, "reading", "there is none that the model of this rig can use",
                  "Add a block [[reading]] with kind = \"rebound\" and values = [...]"});
  if (std::all_of(sheet.unknowns.begin(), sheet.unknowns.end(),
                  [](const Unknown &one) { return one.parameter.minor; }))
    problems.add({sheet.path.string(), 0, 0, "layer", "nothing is unknown, so there is nothing to settle",
                  "Write material = \"unknown foam\", or a +- behind a thickness"});
  problems.throw_if_any();
  return sheet;
}

Exit with_kept_runs(const Solve &solve, bool quiet, const std::atomic<bool> &interrupted,
                    const std::function<Exit(const RunCases &run, Progress &progress)> &answer)
{
  const RunStore store(RunStore::default_folder, answering_version());
  Progress       progress(progress_on_standard_error(), quiet);
  const RunCases run = [&](const std::vector<solver::Case> &cases) {
    SolveWish wish;
    wish.pictures = wish.estimate_error = false;
    auto many = run_many(
      cases, wish, solve, &store,
      [&](double fraction, const std::string &what) { progress.update(fraction, "settling: " + what); },
      interrupted);
    if (interrupted)
      throw settle::Interrupted();
    return std::move(many.results);
  };
  try
  {
    return answer(run, progress);
  }
  catch (const settle::Interrupted &)
  {
    fmt::print(stderr,
               "solemech: interrupted, nothing was written; finished runs are kept for the next time.\n");
    return Exit::interrupted;
  }
  catch (const settle::ImpossibleInput &error)
  {
    fmt::print(stderr, "solemech: {}\n", error.what());
    return Exit::usage;
  }
  catch (const settle::PredictionFailed &error)
  {
    fmt::print(stderr, "solemech: {}\n", error.what());
    return Exit::run_failed;
  }
}
} // namespace solemech::tools
