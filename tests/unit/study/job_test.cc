// SPDX-License-Identifier: Apache-2.0
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/study/job.h"

#include <algorithm>
#include <stdexcept>
#include <thread>

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
  Job        job(solver.solve(), {}, {}, never);
  const auto results = job.run({case_of(280), case_of(290), case_of(280), case_of(300)}, {});
  CHECK(solver.n_calls == 3);
  CHECK(job.n_calculated() == 3);
  CHECK(job.n_from_store() == 0);
  REQUIRE(results.size() == 4);
  CHECK(results[0].find("temperature")->value == 280);
  CHECK(results[1].find("temperature")->value == 290);
  CHECK(results[2].find("temperature")->value == 280);
  CHECK(results[3].find("temperature")->value == 300);
  CHECK(job.run(std::vector<WantedRun>()).empty());
  // What is wanted of a run is a part of it.
  job.run({{case_of(280), {}}, {case_of(280), coarser_run}});
  CHECK(solver.n_calls == 5);
}

TEST_CASE("a case that the solver refuses or trips over costs no other, unless it is the only one")
{
  Counting    solver;
  const Solve bad = [&](const auto &setup, const auto &wish, const auto &progress) {
    if (setup.temperature == 290)
      throw std::invalid_argument("too cold");
    if (setup.temperature == 300)
      throw std::logic_error("index 7 of 7");
    return solver.solve()(setup, wish, progress);
  };
  Job        job(bad, {}, {}, never);
  const auto results = job.run({case_of(280), case_of(290), case_of(300), case_of(310)}, {});
  CHECK(results[0].complete);
  CHECK(results[1].stop_reason == "too cold");
  CHECK(results[2].stop_reason.find("a fault of the program") == 0);
  CHECK(results[3].complete);
  CHECK_THROWS_AS(job.run_alone({case_of(290), {}}), std::invalid_argument);
  CHECK(job.run_alone({case_of(280), {}}).complete);
}

TEST_CASE("why the first run stopped early is kept apart from refusals and faults")
{
  const Solve bad = [](const auto &setup, const auto &, const auto &) {
    if (setup.temperature == 290)
      throw std::invalid_argument("too cold");
    solver::Result result;
    result.complete = setup.temperature != 300;
    result.stop_reason = result.complete ? "" : "no room left";
    return result;
  };
  Job job(bad, {}, {}, never);
  job.run({case_of(280), case_of(290)}, {});
  CHECK(job.refusal());
  CHECK(job.early_stop().empty());
  job.run({case_of(300)}, {});
  CHECK(job.early_stop() == "no room left");
  CHECK_FALSE(job.failure());
}

TEST_CASE("after an interruption the same list calculates what was not finished, and nothing else")
{
  const tests::TemporaryFolder folder;
  const RunStore               store(folder.path, "1.0");
  std::vector<solver::Case>    cases;
  for (int i = 0; i < 12; ++i)
    cases.push_back(case_of(280 + i));

  constexpr int     k = 5;
  std::atomic<bool> interrupted{false};
  std::atomic<int>  n_begun{0}, n_finished{0}; // however many begin side by side, k finish
  Counting          solver;
  const Solve       slow = [&](const auto &setup, const auto &wish, const auto &progress) {
    auto result = solver.solve()(setup, wish, progress);
    if (++n_begun > k)
    {
      while (n_finished < k)
        std::this_thread::yield();
      interrupted = true;
    }
    if (!progress(0.5, "falling")) // stopped half way, and yet it looks complete
      return result;
    ++n_finished;
    return result;
  };
  CHECK_THROWS_AS(Job(slow, store, {}, interrupted).run(cases, {}), Interrupted);
  const int n_first = n_finished;
  CHECK(n_first == k);

  Counting   again;
  Job        job(again.solve(), store, {}, never);
  const auto results = job.run(cases, {});
  CHECK(again.n_calls == 12 - n_first);
  CHECK(job.n_from_store() == static_cast<std::size_t>(n_first));
  CHECK(job.n_calculated() == static_cast<std::size_t>(12 - n_first));
  for (int i = 0; i < 12; ++i)
    CHECK(results[static_cast<std::size_t>(i)].find("temperature")->value == 280 + i);

  std::atomic<bool> at_once{true};
  Counting          unasked;
  CHECK_THROWS_AS(Job(unasked.solve(), {}, {}, at_once).run(cases, {}), Interrupted);
  CHECK(unasked.n_calls == 0);
}

TEST_CASE("a store that cannot be written is told and costs no answer")
{
  const tests::TemporaryFolder folder;
  tests::put(folder.path / "file", "in the way");
  Counting solver;
  Job      job(solver.solve(), RunStore(folder.path / "file" / "runs", "1.0"), {}, never);
  CHECK(job.run({case_of(280), case_of(290)}, {})[1].find("temperature")->value == 290);
  CHECK(job.not_kept().find("runs") != std::string::npos);
}

TEST_CASE("progress rises over all lists of a command, and counts the runs of each")
{
  Counting    solver;
  const Solve falling = [&](const auto &setup, const auto &wish, const auto &progress) {
    for (const double share : {0.6, 0.9, 0.5}) // a run that is taken again with a finer mesh
      progress(share, "falling back");
    return solver.solve()(setup, wish, progress);
  };
  std::vector<double>      shares; // told one after another, by whichever thread
  std::vector<std::string> words;
  const auto               told = [&](double share, const std::string &what) {
    shares.push_back(share);
    words.push_back(what);
  };
  Job job(falling, {}, told, never);
  job.expect(8);
  job.run({case_of(280), case_of(290), case_of(300), case_of(310)}, readings_only);
  CHECK(shares.size() >= 4 * 4);
  CHECK(shares.back() == Approx(0.5)); // four of eight
  CHECK(words.end()[-2] == "4 of 4 runs");
  CHECK(words.back().empty());
  job.run({case_of(320), case_of(330), case_of(340), case_of(350)}, readings_only, "once more");
  CHECK(shares.back() == Approx(1));
  CHECK(words.end()[-2] == "once more, 4 of 4 runs");
  CHECK(std::is_sorted(shares.begin(), shares.end()));
}

TEST_CASE("runs that are there already are no work that is left")
{
  const tests::TemporaryFolder folder;
  const RunStore               store(folder.path, "1.0");
  Counting                     solver;
  Job(solver.solve(), store, {}, never).run({case_of(280), case_of(290), case_of(300)}, {});
  std::vector<double> shares;
  const Solve         asking = [&](const auto &setup, const auto &wish, const auto &progress) {
    progress(0.5, "falling");
    return solver.solve()(setup, wish, progress);
  };
  Job(
    asking, store, [&](double share, const auto &) { shares.push_back(share); }, never)
    .run({case_of(280), case_of(290), case_of(300), case_of(310)}, {});
  // Three were read back, and half of the only one to calculate is about half of all.
  CHECK(std::any_of(shares.begin(), shares.end(), [](double share) { return share > 0.45 && share < 0.55; }));
}
