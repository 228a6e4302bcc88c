// SPDX-License-Identifier: Apache-2.0
// Progress on a terminal and in a log file, with a clock that the test moves.
#include "tests/support/catch.h"
#include "tools/program/progress.h"

#include <memory>

using namespace solemech::tools;

namespace
{
struct Bench
{
  double         now = 0;
  std::string    written;
  ProgressOutput output(bool redraws, int width = 80)
  {
    return {[this](std::string_view text) { written += text; }, [this] { return now; }, redraws, width};
  }
};

int count(const std::string &text, const std::string &part)
{
  int n = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++n;
  return n;
}
} // namespace

TEST_CASE("short work stays silent")
{
  Bench    bench;
  Progress progress(bench.output(true), false);
  for (bench.now = 0; bench.now < 1.9; bench.now += 0.1)
    progress.update(bench.now / 2, "drop");
  progress.update(1, "drop");
  CHECK(bench.written.empty());
}

TEST_CASE("a terminal line is redrawn at most ten times a second and removed at the end")
{
  Bench bench;
  {
    Progress progress(bench.output(true), false);
    for (int i = 0; i <= 4000; ++i)
    {
      bench.now = 0.001 * i;
      progress.update(0.25 * bench.now / 4, "drop");
    }
    const int n_redraws = count(bench.written, "\r");
    CHECK(n_redraws >= 18);
    CHECK(n_redraws <= 21);
    CHECK(bench.written.find("about 12 s left") != std::string::npos);
    CHECK(bench.written.find('\n') == std::string::npos);
  }
  CHECK(bench.written.ends_with("\r\033[K"));
}

TEST_CASE("a terminal line never wraps")
{
  Bench    bench;
  Progress progress(bench.output(true, 30), false);
  bench.now = 5;
  progress.update(0.5, "a stack with a very long name indeed");
  CHECK(bench.written.size() == std::string("\r\033[K").size() + 29);
}

TEST_CASE("a log file gets a plain line every ten seconds")
{
  Bench    bench;
  Progress progress(bench.output(false), false);
  for (bench.now = 0; bench.now <= 25; bench.now += 0.5)
    progress.update(bench.now / 100, "drop");
  CHECK(count(bench.written, "\n") == 2);
  CHECK(bench.written.find('\033') == std::string::npos);
  CHECK(bench.written.find('\r') == std::string::npos);
  CHECK(bench.written.starts_with(" 10 %  drop, about 1 min 30 s left\n"));
}

TEST_CASE("no time left is told from a millionth of the work, and the share never falls")
{
  Bench    bench;
  Progress progress(bench.output(false), false);
  bench.now = 11;
  progress.update(1e-6, "settling");
  CHECK(bench.written == "  0 %  settling, time left not known yet\n");
  bench.now = 50;
  progress.update(0.5, "settling");
  bench.now = 61;
  progress.update(0.1, "settling");
  CHECK(bench.written.ends_with(" 50 %  settling, about 53 s left\n"));
}

TEST_CASE("quiet means quiet")
{
  Bench    bench;
  Progress progress(bench.output(true), true);
  bench.now = 60;
  progress.update(0.5, "drop");
  CHECK(bench.written.empty());
}

TEST_CASE("durations are printed as people say them")
{
  CHECK(duration_text(0.2) == "0 s");
  CHECK(duration_text(59.4) == "59 s");
  CHECK(duration_text(125) == "2 min 5 s");
  CHECK(duration_text(4200) == "1 h 10 min");
}
