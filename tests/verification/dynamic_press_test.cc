// SPDX-License-Identifier: Apache-2.0
// The press on a light, homogeneous column against an independent integration of the same law: driven by
// displacement, by a force pulse, and by a given force history.
#include "solver/resolution.h"
#include "solver/rigs/press.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/unit/support/reference_foams.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
// What the project promises for the press. Returns are shares of the work of loading.
constexpr double         promised = 0.002;
const solver::Resolution fine{0.5, 0.1};
const solver::RunOptions plain{.progress = {}, .pictures = false};

solver::Result pressed(const ColumnFoam &foam, solver::PressRig rig)
{
  auto input = column_case(foam, bench_column());
  rig.tup = wide_plate(input.plug.radius);
  input.rig = rig;
  return solver::run_rig(input, rig, fine, plain);
}
} // namespace

TEST_CASE("a press driven by displacement reads the law of the column", "[press]")
{
  constexpr double peak = 10e-3, duration = 30e-3, step = 5e-6;
  for (const auto &foam : {relaxing_foam(), full_foam()})
  {
    const auto expected = column_press(foam, bench_column(), peak, duration, step);
    const auto result = pressed(foam, {.tup = {},
                                       .control = solver::PressControl::displacement,
                                       .wave = solver::PressWave::half_sine,
                                       .peak = peak,
                                       .duration = duration,
                                       .table = {}});
    CHECK(reading(result, "peak_force") == Approx(expected.peak_force).epsilon(promised));
    CHECK(reading(result, "greatest_compression") == Approx(peak).epsilon(promised));
    CHECK(std::abs(reading(result, "loop_return") - expected.return_by_loop) <= promised);
    // The recorded curve itself, at instants spread over the pulse.
    for (const double t : {3e-3, 8e-3, 12e-3, 18e-3, 22e-3})
      CHECK(std::abs(interpolated(result.time, curve(result, "force"), t) -
                     interpolated(expected.time, expected.force, t)) <= promised * expected.peak_force);
  }
}

TEST_CASE("a press driven by a force pulse sinks as the law of the column", "[press]")
{
  // A body-like pulse: half a sine of 900 N in 185 ms.
  constexpr double peak = 900, duration = 185e-3;
  constexpr int    n_steps = 20000;
  const auto       pulse = [](double t) { return peak * std::sin(std::numbers::pi * t / duration); };
  for (const auto &foam : {relaxing_foam(), full_foam()})
  {
    const auto       expected = column_force_pulse(foam, bench_column(), pulse, duration, n_steps);
    solver::PressRig rig;
    rig.control = solver::PressControl::force;
    rig.wave = solver::PressWave::half_sine;
    rig.peak = peak;
    rig.duration = duration;
    SECTION("as a half sine" + std::string(foam.slipping.empty() ? "" : ", full law"))
    {
      const auto result = pressed(foam, rig);
      CHECK(reading(result, "peak_force") == Approx(peak).epsilon(promised));
      CHECK(reading(result, "greatest_compression") == Approx(expected.peak_compression).epsilon(promised));
      CHECK(std::abs(reading(result, "loop_return") - expected.return_by_loop) <= promised);
    }
    SECTION("as a table" + std::string(foam.slipping.empty() ? "" : ", full law"))
    {
      rig.wave = solver::PressWave::table;
      constexpr int n_rows = 400;
      for (int i = 0; i <= n_rows; ++i)
        rig.table.emplace_back(duration * i / n_rows, pulse(duration * i / n_rows));
      const auto result = pressed(foam, rig);
      CHECK(reading(result, "peak_force") == Approx(peak).epsilon(promised));
      CHECK(reading(result, "greatest_compression") == Approx(expected.peak_compression).epsilon(promised));
      CHECK(std::abs(reading(result, "loop_return") - expected.return_by_loop) <= promised);
    }
  }
}
