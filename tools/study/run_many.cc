// SPDX-License-Identifier: Apache-2.0
#include "tools/study/run_many.h"

#include "solver/in_parallel.h"
#include "tools/language/case_text.h"
#include "tools/study/shared_progress.h"

#include <fmt/format.h>

#include <unordered_map>

namespace solemech::tools
{
namespace
{
/// Of the store of runs, beyond which the oldest go [bytes]: some ten thousand drops.
constexpr std::uintmax_t greatest_store = 1'000'000'000;

/// Which case is solved for each case: the first one that is equal to it.
struct Different
{
  std::vector<std::size_t> first;  ///< index of the case that is solved, one each
  std::vector<std::size_t> number; ///< per case: index into `first`
};

Different different(const std::vector<solver::Case> &cases)
{
  Different                                    found;
  std::unordered_map<std::string, std::size_t> known;
  for (std::size_t i = 0; i < cases.size(); ++i)
  {
    const auto [entry, is_new] = known.try_emplace(canonical_text(cases[i]), found.first.size());
    if (is_new)
      found.first.push_back(i);
    found.number.push_back(entry->second);
  }
  return found;
}

solver::Result not_begun()
{
  solver::Result result;
  result.complete = false;
  result.stop_reason = "interrupted";
  return result;
}
} // namespace

ManyRuns run_many(const std::vector<solver::Case> &cases, const SolveWish &wish, const Solve &solve,
                  const RunStore *store, const ManyProgress &progress, const std::atomic<bool> &interrupted)
{
  const Different             runs = different(cases);
  const std::size_t           n_runs = runs.first.size();
  std::vector<solver::Result> results(n_runs, not_begun());
  SharedProgress              done(n_runs);
  std::atomic<std::size_t>    n_calculated{0}, n_from_store{0};
  const auto                  reached = [&](std::size_t i, double share) {
    done.reached(i, share, [&](double all) {
      if (progress)
        progress(all, fmt::format("{} of {} runs", n_calculated + n_from_store, n_runs));
    });
  };

  solver::in_parallel(n_runs, [&](std::size_t i) {
    if (interrupted)
      return;
    const solver::Case &setup = cases[runs.first[i]];
    if (auto stored = store ? store->find(setup, wish) : std::nullopt)
    {
      results[i] = std::move(*stored);
      ++n_from_store;
    }
    else
    {
      results[i] = solve(setup, wish, [&](double fraction, const char *) {
        reached(i, fraction);
        return !interrupted;
      });
      if (store)
        store->keep(setup, wish, results[i]);
      ++n_calculated;
    }
    reached(i, 1);
  });

  if (store && n_calculated > 0)
    store->shrink_to(greatest_store);
  ManyRuns answer{{}, n_calculated, n_from_store};
  for (const std::size_t number : runs.number)
    answer.results.push_back(results[number]);
  return answer;
}
} // namespace solemech::tools
