// SPDX-License-Identifier: Apache-2.0
#include "tools/study/with_bands.h"

#include "solver/in_parallel.h"
#include "tools/language/doubted_case.h"
#include "tools/study/shared_progress.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
/// Of the work of a run with its error, that of one run at an end of a band.
constexpr double end_cost = 0.2;

/// Runs of both ends of each direction, the upper one first; empty when interrupted.
std::vector<solver::Result> run_ends(const solver::Case                     &setup,
                                     const std::vector<std::vector<double>> &directions, const Solve &solve,
                                     const RunProgress &progress, double begin)
{
  const std::size_t           n = 2 * directions.size();
  std::vector<solver::Result> ends(n);
  SharedProgress              done(n);
  std::atomic<bool>           stopped{false};
  solver::in_parallel(n, [&](std::size_t i) {
    ends[i] = solve(
      moved(setup, directions[i / 2], i % 2 == 0 ? 1 : -1), coarser_run, [&](double fraction, const char *) {
        if (!done.reached(i, fraction,
                          [&](double share) { return progress(begin + (1 - begin) * share, "band"); }))
          stopped = true;
        return !stopped;
      });
  });
  return stopped ? std::vector<solver::Result>() : ends;
}

void set_shifts(solver::Result &result, const std::vector<solver::Result> &ends)
{
  for (auto &reading : result.readings)
  {
    std::vector<double> shifts;
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2)
    {
      const auto *upper = ends[i].find(reading.name), *lower = ends[i + 1].find(reading.name);
      if (upper && lower)
        shifts.push_back(0.5 * (upper->value - lower->value));
    }
    if (2 * shifts.size() == ends.size())
      reading.shifts = std::move(shifts);
  }
}
} // namespace

Solve with_bands(Solve solve)
{
  return [solve = std::move(solve)](const solver::Case &setup, const SolveWish &wish,
                                    const RunProgress &progress) {
    if (setup.doubts.empty() || !wish.estimate_error)
      return solve(setup, wish, progress);
    const auto   directions = independent_doubts(setup.doubts);
    const double middle = 1 / (1 + 2 * end_cost * static_cast<double>(directions.size()));
    auto         result = solve(setup, wish,
                                [&](double fraction, const char *what) { return progress(middle * fraction, what); });
    if (!result.complete)
      return result;
    std::vector<solver::Result> ends;
    try
    {
      ends = run_ends(setup, directions, solve, progress, middle);
    }
    catch (const std::invalid_argument &refusal)
    {
      result.warnings.push_back(
        {"", fmt::format("No bands: within its doubts the stack cannot be built ({}).", refusal.what())});
      return result;
    }
    if (ends.empty())
    {
      result.complete = false;
      result.stop_reason = "interrupted";
    }
    for (const auto &end : ends)
      if (!end.complete)
      {
        result.warnings.push_back(
          {"", fmt::format("No bands: at an end of the doubts the run stopped ({}).", end.stop_reason)});
        return result;
      }
    set_shifts(result, ends);
    return result;
  };
}
} // namespace solemech::tools
