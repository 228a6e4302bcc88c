// SPDX-License-Identifier: Apache-2.0
// Layers of which only a share of the area is there, pressed: a free column against an independent
// integration of the same law on that much less area, and a plug that goes over into the whole without a
// step.
#include "solver/resolution.h"
#include "solver/rigs/press.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/support/rubber.h"
#include "tests/unit/support/reference_foams.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double         promised = 0.002; // what the project promises for the press
const solver::RunOptions plain{.progress = {}, .pictures = false};

solver::PressRig half_sine(double peak, const solver::Tup &tup)
{
  return {.tup = tup,
          .control = solver::PressControl::displacement,
          .wave = solver::PressWave::half_sine,
          .peak = peak,
          .duration = 30e-3,
          .table = {}};
}

/// A plug on a bonded base under a smaller head: what a share does where neighbours hold each other.
solver::Result pressed_plug(const materials::Material &material, double share)
{
  auto input = b1_stack(false);
  input.layers[0].material = material;
  input.layers[0].area_share = share;
  const auto rig = half_sine(4e-3, b1_tup());
  input.rig = rig;
  return solver::run_rig(input, rig, {0.8, 1}, plain);
}
} // namespace

TEST_CASE("a column with a share of its area carries that share of its law", "[press]")
{
  constexpr double peak = 10e-3, share = 0.6, step = 5e-6;
  auto             less = bench_column();
  less.area *= share;
  for (const auto &foam : {relaxing_foam(), full_foam()})
  {
    const auto expected = column_press(foam, less, peak, 30e-3, step);
    auto       input = column_case(foam, bench_column());
    input.layers[0].area_share = share;
    const auto rig = half_sine(peak, wide_plate(input.plug.radius));
    input.rig = rig;
    const auto result = solver::run_rig(input, rig, {0.5, 0.1}, plain);
    CHECK(reading(result, "peak_force") == Approx(expected.peak_force).epsilon(promised));
    CHECK(std::abs(reading(result, "loop_return") - expected.return_by_loop) <= promised);
  }
}

TEST_CASE("nothing jumps as the last of the area comes in", "[press]")
{
  for (const auto &material : {foam_material(full_foam(), 200), rubber(3.6e6)})
  {
    CAPTURE(material.name);
    const auto   whole = pressed_plug(material, 1), almost = pressed_plug(material, 0.999);
    const double change = reading(almost, "peak_force") / reading(whole, "peak_force") - 1;
    // A thousandth of the area, and what a gap of half a thousandth of a lug gives way.
    CHECK(change < 0);
    CHECK(change > -0.01);
    CHECK(reading(almost, "loop_return") == Approx(reading(whole, "loop_return")).margin(0.002));
  }
}
