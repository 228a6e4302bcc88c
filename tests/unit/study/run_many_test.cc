// SPDX-License-Identifier: Apache-2.0
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/study/run_many.h"

#include <algorithm>
#include <stdexcept>

using namespace solemech;
using namespace solemech::tools;

namespace
{
const std::atomic<bool> never{false};

solver::Case case_of(double temperature)
{
  solver::Case setup;
  setup.temperature = temperature;
  return setup;
}

/// Answers with the temperature of the case and counts its calls.
struct Counting
{
  std::atomic<int> n_calls{0};

  Solve solve()
  {
    return [this](const solver::Case &setup, const SolveWish &, const RunProgress &) {
      ++n_calls;
      solver::Result result;
      result.readings.push_back({"temperature", setup.temperature, "K", "of the case", -1});
      return result;
    };
  }
};
} // namespace

TEST_CASE("equal cases are solved once, and every case gets its own answer")
{
  Counting   solver;
  const auto runs = run_many({case_of(280), case_of(290), case_of(280), case_of(300)}, {}, solver.solve(),
                             nullptr, {}, never);
  CHECK(solver.n_calls == 3);
  CHECK(runs.n_calculated == 3);
  CHECK(runs.n_from_store == 0);
  REQUIRE(runs.results.size() == 4);
  CHECK(runs.results[0].find("temperature")->value == 280);
  CHECK(runs.results[1].find("temperature")->value == 290);
  CHECK(runs.results[2].find("temperature")->value == 280);
  CHECK(runs.results[3].find("temperature")->value == 300);
  CHECK(run_many({}, {}, solver.solve(), nullptr, {}, never).results.empty());
}

TEST_CASE("what a first call finished is not solved again, even when a fault ended it")
{
  const tests::TemporaryFolder folder;
  const RunStore               store(folder.path, "1.0");
  Counting                     solver;
  const std::vector            cases{case_of(280), case_of(290), case_of(300)};
  const Solve                  faulty = [&](const auto &setup, const auto &wish, const auto &progress) {
    if (setup.temperature == 300)
      throw std::runtime_error("a fault");
    return solver.solve()(setup, wish, progress);
  };
  CHECK_THROWS_WITH(run_many(cases, {}, faulty, &store, {}, never), "a fault");
  const int n_first = solver.n_calls;

  const auto runs = run_many(cases, {}, solver.solve(), &store, {}, never);
  CHECK(solver.n_calls == 3);
  CHECK(runs.n_from_store == static_cast<std::size_t>(n_first));
  CHECK(runs.n_calculated == static_cast<std::size_t>(3 - n_first));
  CHECK(runs.results[1].find("temperature")->value == 290);
}

TEST_CASE("an interruption begins no further run and says so in the results")
{
  std::atomic<bool> interrupted{true};
  Counting          solver;
  const auto        runs = run_many({case_of(280)}, {}, solver.solve(), nullptr, {}, interrupted);
  CHECK(solver.n_calls == 0);
  CHECK_FALSE(runs.results.at(0).complete);
}

TEST_CASE("progress rises to the end and counts the runs")
{
  Counting   solver;
  const auto falling = [&](const auto &setup, const auto &wish, const auto &progress) {
    for (const double share : {0.6, 0.9, 0.5}) // a run that is taken again with a finer mesh
      progress(share, "falling back");
    return solver.solve()(setup, wish, progress);
  };
  std::vector<double>      shares; // told one after another, by whichever thread
  std::vector<std::string> words;
  run_many(
    {case_of(280), case_of(290), case_of(300), case_of(310)}, {}, falling, nullptr,
    [&](double share, const std::string &what) {
      shares.push_back(share);
      words.push_back(what);
    },
    never);
  CHECK(shares.size() >= 4 * 4);
  CHECK(std::is_sorted(shares.begin(), shares.end()));
  CHECK(shares.back() == 1);
  CHECK(words.back() == "4 of 4 runs");
}
