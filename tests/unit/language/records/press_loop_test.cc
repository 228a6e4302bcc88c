// SPDX-License-Identifier: Apache-2.0
// Press loops with known areas: a linear spring with a loop of half width h each way (areas of trapezia in
// closed form).
#include "tests/support/catch.h"
#include "tools/language/records/press_loop.h"

#include <cmath>

using namespace solemech;
using namespace solemech::records;

namespace
{
/// Up to `way` along F = k x, back along F = r k x^2 / way: areas k way^2 / 2 and r k way^2 / 3.
void add_cycle(Record &record, double k, double way, double r, int n = 200)
{
  const auto add = [&](double x, double f) {
    record.compression.push_back(x);
    record.force.push_back(f);
    record.line.push_back(int(record.line.size()) + 2);
  };
  for (int i = 0; i <= n; ++i)
    add(way * i / n, k * way * i / n);
  for (int i = n - 1; i >= 0; --i)
    add(way * i / n, r * k * way * i / n * i / n);
}
} // namespace

TEST_CASE("a loop of straight and parabolic branches returns the ratio of their areas")
{
  Record record;
  add_cycle(record, 2e5, 8e-3, 1);
  materials::Problems problems;
  const auto          loop = read_loop(record, {}, "press.csv", problems);
  CHECK(problems.empty());
  CHECK(loop.loop_return.value == Approx(2. / 3).epsilon(1e-4));
  CHECK(loop.stiffness.value == Approx(2e5).epsilon(1e-9));
  CHECK(loop.peak_force.value == Approx(1600).epsilon(1e-9));
  CHECK(loop.compression.value == Approx(8e-3).epsilon(1e-9));
  CHECK(loop.n_cycles == 1);
  CHECK(loop.loop_return.doubt > 0);
}

TEST_CASE("of several cycles the last one counts, also counted upwards")
{
  Record record;
  for (const double r : {0.6, 0.75, 0.9})
    add_cycle(record, 2e5, 8e-3, r);
  materials::Problems problems;
  const auto          loop = read_loop(record, {}, "press.csv", problems);
  CHECK(problems.empty());
  CHECK(loop.n_cycles == 3);
  CHECK(loop.loop_return.value == Approx(0.6).epsilon(1e-3));
  for (auto &x : record.compression)
    x = -x;
  const auto turned = read_loop(record, {}, "press.csv", problems);
  CHECK(turned.loop_return.value == Approx(loop.loop_return.value).epsilon(1e-12));
}

TEST_CASE("a press that never goes back, or columns that are missing, are named")
{
  Record record;
  add_cycle(record, 2e5, 8e-3, 0.9);
  record.compression.resize(201), record.force.resize(201), record.line.resize(201);
  materials::Problems problems;
  read_loop(record, {}, "press.csv", problems);
  CHECK(problems.text().find("has no unloading") != std::string::npos);
  materials::Problems others;
  read_loop({}, {}, "press.csv", others);
  CHECK(others.text().find("needs columns of compression and force") != std::string::npos);
}
