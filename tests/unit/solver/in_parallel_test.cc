// SPDX-License-Identifier: Apache-2.0
#include "solver/in_parallel.h"
#include "tests/support/catch.h"

#include <chrono>
#include <mutex>
#include <set>
#include <thread>
#include <vector>

using solemech::solver::in_parallel;

TEST_CASE("every job is done once, whatever the number of threads")
{
  for (const int n_threads : {1, 2})
  {
    tbb::task_arena               arena(n_threads);
    std::vector<std::atomic<int>> done(100);
    arena.execute([&] { in_parallel(done.size(), [&](std::size_t i) { ++done[i]; }); });
    for (const auto &count : done)
      CHECK(count == 1);
  }
  in_parallel(0, [](std::size_t) { FAIL("there is no job"); });
}

TEST_CASE("an exception ends the work and reaches the caller as it was thrown")
{
  std::atomic<int> n_begun{0};
  CHECK_THROWS_WITH(in_parallel(1000,
                                [&](std::size_t i) {
                                  ++n_begun;
                                  if (i == 3)
                                    throw std::runtime_error("the fourth job");
                                  std::this_thread::sleep_for(std::chrono::milliseconds(1));
                                }),
                    "the fourth job");
  CHECK(n_begun < 1000);
}

TEST_CASE("jobs within jobs share the threads, and none is left out when another job fails")
{
  std::mutex                guard;
  std::set<std::thread::id> threads;
  std::atomic<int>          n_inner{0}, n_whole{0};
  tbb::task_arena           arena(2);
  arena.execute([&] {
    CHECK_THROWS_AS(in_parallel(6,
                                [&](std::size_t i) {
                                  if (i == 5)
                                    throw std::invalid_argument("the last one");
                                  std::atomic<int> own{0};
                                  in_parallel(20, [&](std::size_t) {
                                    std::this_thread::sleep_for(std::chrono::milliseconds(1));
                                    ++own;
                                    const std::lock_guard lock(guard);
                                    threads.insert(std::this_thread::get_id());
                                  });
                                  n_inner += own;
                                  ++n_whole;
                                }),
                    std::invalid_argument);
  });
  CHECK(n_inner == 20 * n_whole);
  CHECK(threads.size() <= 2);
}
