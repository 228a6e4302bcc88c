// SPDX-License-Identifier: Apache-2.0
#include "tests/support/catch.h"
#include "tools/study/in_parallel.h"

#include <chrono>
#include <stdexcept>

using namespace solemech::tools;

TEST_CASE("every job is done once, whatever the number of threads")
{
  for (const std::size_t n_threads : {0, 1, 2, 7})
  {
    std::vector<std::atomic<int>> done(100);
    in_parallel(done.size(), n_threads, [&](std::size_t i) { ++done[i]; });
    for (const auto &count : done)
      CHECK(count == 1);
  }
  in_parallel(0, 2, [](std::size_t) { FAIL("there is no job"); });
}

TEST_CASE("an exception ends the work and reaches the caller")
{
  std::atomic<int> n_begun{0};
  CHECK_THROWS_WITH(in_parallel(1000, 2,
                                [&](std::size_t i) {
                                  ++n_begun;
                                  if (i == 3)
                                    throw std::runtime_error("the fourth job");
                                  std::this_thread::sleep_for(std::chrono::milliseconds(1));
                                }),
                    "the fourth job");
  CHECK(n_begun < 1000);
}
