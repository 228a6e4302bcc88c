// SPDX-License-Identifier: Apache-2.0
#include "tests/support/catch.h"
#include "tests/unit/output/results/synthetic.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/study/run_store.h"

#include <chrono>
#include <limits>
#include <thread>

using namespace solemech;
using namespace solemech::tools;

namespace
{
const std::filesystem::path &only_file(const std::filesystem::path &folder)
{
  static std::filesystem::path found;
  std::size_t                  n_files = 0;
  for (const auto &entry : std::filesystem::directory_iterator(folder))
  {
    found = entry.path();
    ++n_files;
  }
  REQUIRE(n_files == 1);
  return found;
}
} // namespace

TEST_CASE("a run is found again by case, wish and version, and by nothing else")
{
  const tests::TemporaryFolder folder;
  const Run                    run = tests::synthetic_heel();
  const RunStore               store(folder.path / "runs", "1.0");
  CHECK_FALSE(store.find(run.setup, {}));
  CHECK_FALSE(store.holds(run.setup, {}));
  store.keep(run.setup, {}, run.result);

  CHECK(store.holds(run.setup, {}));
  const auto found = store.find(run.setup, {});
  REQUIRE(found);
  CHECK(found->time == run.result.time);
  REQUIRE(found->readings.size() == run.result.readings.size());
  for (std::size_t i = 0; i < found->readings.size(); ++i)
    CHECK(found->readings[i].value == run.result.readings[i].value);
  CHECK(found->ledger.size() == run.result.ledger.size());

  CHECK_FALSE(store.find(run.setup, {.pictures = false}));
  CHECK_FALSE(store.find(run.setup, {.estimate_error = false}));
  CHECK_FALSE(store.find(run.setup, {.level = -1}));
  CHECK_FALSE(RunStore(folder.path / "runs", "1.1").find(run.setup, {}));
  CHECK_FALSE(RunStore(folder.path / "elsewhere", "1.0").find(run.setup, {}));

  solver::Case other = run.setup;
  other.layers.front().thickness *= 1 + 1e-15;
  CHECK_FALSE(store.find(other, {}));
  other = run.setup;
  other.label = "called otherwise";
  CHECK(store.find(other, {}));
}

TEST_CASE("a damaged file is not there and is replaced")
{
  const tests::TemporaryFolder folder;
  const Run                    run = tests::synthetic_heel();
  const RunStore               store(folder.path, "1.0");
  store.keep(run.setup, {}, run.result);
  const auto        path = only_file(folder.path);
  const std::string whole = tests::text_of(path);

  SECTION("cut short")
  {
    tests::put(path, whole.substr(0, whole.size() / 2));
  }
  SECTION("one byte flipped in its middle")
  {
    std::string text = whole;
    text[text.size() / 2] = static_cast<char>(text[text.size() / 2] ^ 1);
    tests::put(path, text);
  }
  SECTION("empty")
  {
    tests::put(path, "");
  }
  SECTION("something else")
  {
    tests::put(path, std::string(1000, 'x'));
  }
  CHECK_FALSE(store.find(run.setup, {}));
  store.keep(run.setup, {}, run.result);
  CHECK(store.find(run.setup, {}));
}

TEST_CASE("a run that stopped early is not kept, and nothing is left behind by writing")
{
  const tests::TemporaryFolder folder;
  Run                          run = tests::synthetic_heel();
  const RunStore               store(folder.path, "1.0");
  run.result.complete = false;
  store.keep(run.setup, {}, run.result);
  CHECK(std::filesystem::is_empty(folder.path));

  run.result.complete = true;
  run.result.time.back() = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS(store.keep(run.setup, {}, run.result));
  CHECK(std::filesystem::is_empty(folder.path));
}

TEST_CASE("a store that grows too large forgets what was calculated first")
{
  const tests::TemporaryFolder folder;
  const RunStore               store(folder.path, "1.0");
  Run                          run = tests::synthetic_heel();
  std::vector<solver::Case>    cases;
  std::uintmax_t               size = 0;
  for (int i = 0; i < 3; ++i)
  {
    run.setup.temperature = 290 + i;
    cases.push_back(run.setup);
    store.keep(run.setup, {}, run.result);
    std::this_thread::sleep_for(std::chrono::milliseconds(20)); // clocks of file systems tick in milliseconds
  }
  for (const auto &entry : std::filesystem::directory_iterator(folder.path))
    size = std::max(size, entry.file_size());
  store.shrink_to(2 * size);
  CHECK_FALSE(store.holds(cases[0], {}));
  CHECK(store.holds(cases[1], {}));
  CHECK(store.holds(cases[2], {}));
  store.shrink_to(0);
  CHECK(std::filesystem::is_empty(folder.path));
}
