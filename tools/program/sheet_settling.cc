// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sheet_settling.h"

#include "tools/language/library.h"
#include "tools/output/results/run_folder.h"
#include "tools/program/places.h"
#include "tools/program/record.h"
#include "tools/study/run_many.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
constexpr double share_of_runs =
  0.97; ///< of the whole work; the rest goes into the settled stack and its files
} // namespace

Sheet settleable_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings)
{
  const auto        library = materials::Library::load(library_folder());
  const ReadOptions options{settings, {case_folder()}, library.source()};
  return read_sheet(path, options);
}

Exit with_kept_runs(const Solve &solve, bool quiet, std::size_t expected,
                    const std::atomic<bool>                                            &interrupted,
                    const std::function<Exit(const RunCases &run, Progress &progress)> &answer)
{
  const RunStore store(RunStore::default_folder, answering_version());
  Progress       progress(progress_on_standard_error(), quiet);
  std::size_t    n_done = 0;
  const RunCases run = [&](const std::vector<solver::Case> &cases) {
    // More runs than expected: the rest of the bar is shared by what is known to come.
    const double all = static_cast<double>(std::max(expected, n_done + cases.size()));
    const double n_now = static_cast<double>(cases.size()), before = static_cast<double>(n_done);
    SolveWish    wish;
    wish.pictures = wish.estimate_error = false;
    auto many = run_many(
      cases, wish, solve, &store,
      [&](double fraction, const std::string &what) {
        progress.update(share_of_runs * (before + fraction * n_now) / all, "settling: " + what);
      },
      interrupted);
    if (interrupted)
      throw settle::Interrupted();
    n_done += cases.size();
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
