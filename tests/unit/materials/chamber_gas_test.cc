// SPDX-License-Identifier: Apache-2.0
// The sealed gas behind a rigid piston. References: isothermal and adiabatic gas column, exponential cooling
// at fixed volume, the complex stiffness of a gas spring with one heat time; all textbook, numbers computed
// outside.
#include "materials/chamber_gas.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

namespace
{
constexpr double never = std::numeric_limits<double>::infinity();
constexpr double area = 15e-4, height = 10e-3; // piston [m2, m]

ChamberGas with_heat_time(double tau)
{
  return {.wall_temperature = 296.15, .heat_time = tau};
}
} // namespace

TEST_CASE("Gas column pressed by 4 mm, isothermal and adiabatic", "[chamber]")
{
  struct Row
  {
    double heat_time, force, work, gauge, heating;
  };
  for (const auto &row :
       {Row{0, 476.325, 1.31780, 317.550e3, 1}, Row{never, 618.765, 1.52866, 412.510e3, 1.2267}})
  {
    const auto gas = with_heat_time(row.heat_time);
    const auto rest = gas.seal(area * height, 150e3);
    CHECK((rest.pressure() - 101325) * area == Approx(225).epsilon(1e-12)); // pre-load p_g A
    const auto p = gas.pressure(rest, area * 6e-3, 1e-3);
    const auto step = gas.advance(rest, area * 6e-3, 1e-3);
    CHECK((p.pressure - 101325) * area == Approx(row.force).epsilon(2e-6));
    CHECK(p.pressure - 101325 == Approx(row.gauge).epsilon(2e-6));
    CHECK(step.state.pressure() == Approx(p.pressure).epsilon(1e-13));
    CHECK(step.work == Approx(row.work).epsilon(5e-6));
    CHECK(step.heat_loss == Approx(0).margin(1e-12));
    CHECK(step.state.temperature / rest.temperature == Approx(row.heating).epsilon(5e-5));
    // Initial stiffness n p A/H of the column: 37.699 and 52.778 N/mm.
    const double n = row.heat_time == 0 ? 1 : 1.4;
    CHECK(-gas.pressure(rest, area * height, 1e-3).derivative * area * area ==
          Approx(n * 251325 * area / height).epsilon(1e-12));
  }
}

TEST_CASE("Pressed fast, cooled, released fast: the bound on heat loss", "[chamber]")
{
  // Work out over work in of a gas that cools to the wall at full compression: 0.7417 net of the atmosphere.
  const auto fast = with_heat_time(never);
  const auto in = fast.advance(fast.seal(area * height, 150e3), area * 6e-3, 1e-3);
  GasState   cooled = in.state;
  double     lost = 0;
  for (int i = 0; i < 10; ++i)
  {
    const auto step = with_heat_time(1).advance(cooled, area * 6e-3, 2);
    lost += step.heat_loss;
    cooled = step.state;
  }
  CHECK(cooled.temperature == Approx(296.15).epsilon(1e-8));
  const auto out = fast.advance(cooled, area * height, 1e-3);
  CHECK(-out.work / in.work == Approx(0.7417).margin(5e-5));
  CHECK(lost > 0);
}

TEST_CASE("Cooling at fixed volume is exponential whatever the step", "[chamber]")
{
  const auto gas = with_heat_time(0.02);
  for (const int n : {1, 3, 10})
  {
    GasState     state{1e-5, 350, 0.01};
    const double start = gas.exergy(state);
    double       lost = 0;
    for (int i = 0; i < n; ++i)
    {
      const auto step = gas.advance(state, 1e-5, 0.03 / n);
      CHECK(step.work == 0);
      lost += step.heat_loss;
      state = step.state;
    }
    CHECK(state.temperature - 296.15 == Approx((350 - 296.15) * std::exp(-1.5)).epsilon(1e-12));
    CHECK(lost == Approx(start - gas.exergy(state)).epsilon(1e-12));
  }
}

TEST_CASE("The pressure at the end of a step is a function of the new volume with the stated derivative",
          "[chamber]")
{
  for (const double tau : {0.0, 1e-3, 5e-3, 0.1, never})
  {
    CAPTURE(tau);
    const auto     gas = with_heat_time(tau);
    const GasState old{1.2e-5, 310, 0.012};
    const double   v = 1.1e-5, d = 1e-5 * v;
    const double   difference =
      (gas.pressure(old, v + d, 2e-3).pressure - gas.pressure(old, v - d, 2e-3).pressure) / (2 * d);
    CHECK(gas.pressure(old, v, 2e-3).derivative == Approx(difference).epsilon(1e-8)); // d^2 of the difference
    CHECK(gas.advance(old, v, 2e-3).state.pressure() ==
          Approx(gas.pressure(old, v, 2e-3).pressure).epsilon(1e-13));
  }
}

TEST_CASE("A small oscillation loses what the complex gas stiffness says", "[chamber]")
{
  // p'/p0 = -(v/V0) [1 + (gamma - 1) i w tau/(1 + i w tau)]: loss per cycle
  // pi p0 V0 (v/V0)^2 (gamma - 1) w tau/(1 + (w tau)^2).
  const double tau = 0.01, w = 80, strain = 1e-3, v0 = area * height, pi = std::numbers::pi;
  const int    n = 1000;
  const double dt = 2 * pi / w / n;
  const auto   gas = with_heat_time(tau);
  GasState     state = gas.seal(v0, 150e3);
  double       lost = 0, work = 0;
  for (int i = 1; i <= 7 * n; ++i)
  {
    const auto step = gas.advance(state, v0 * (1 + strain * std::sin(w * dt * i)), dt);
    if (i > 6 * n)
      lost += step.heat_loss, work += step.work;
    state = step.state;
  }
  const double expected = pi * 251325 * v0 * strain * strain * 0.4 * w * tau / (1 + w * w * tau * tau);
  CHECK(lost == Approx(expected).epsilon(1e-4)); // step error (w dt)^2 and the second order in the amplitude
  CHECK(work == Approx(expected).epsilon(1e-4));
}

TEST_CASE("A step much longer than the heat time ends at wall temperature", "[chamber]")
{
  // A warm gas at rest gives up its exergy at once; a step pressed from the wall temperature is loss-free.
  const auto     gas = with_heat_time(1e-3);
  const GasState warm{1e-5, 340, 0.01};
  const auto     rest = gas.advance(warm, 1e-5, 30);
  CHECK(rest.state.temperature == gas.wall_temperature);
  CHECK(rest.heat_loss == Approx(gas.exergy(warm) - gas.exergy(rest.state)).epsilon(1e-12));
  const auto pressed = gas.advance(rest.state, 0.8e-5, 1);
  CHECK(pressed.heat_loss == 0);
  CHECK(pressed.state.pressure() == Approx(gas.pressure(rest.state, 0.8e-5, 1).pressure).epsilon(1e-14));
}

TEST_CASE("The gas step is of second order in time", "[chamber]")
{
  const auto gas = with_heat_time(5e-3);
  const auto rest = gas.seal(area * height, 150e3);
  const auto run = [&](int n) {
    GasState state = rest;
    for (int i = 1; i <= n; ++i)
      state =
        gas
          .advance(state, rest.volume * (1 - 0.4 * std::pow(std::sin(0.5 * std::numbers::pi * i / n), 2)),
                   1e-2 / n)
          .state;
    return state.pressure();
  };
  const double exact = run(6400), coarse = std::abs(run(20) - exact), fine = std::abs(run(40) - exact);
  CHECK(std::log2(coarse / fine) > 1.9);
  CHECK(std::log2(coarse / fine) < 2.1);
}

TEST_CASE("Exergy balances work and heat loss in every step", "[chamber]")
{
  const auto gas = with_heat_time(5e-3);
  GasState   state = gas.seal(area * height, 150e3);
  for (int i = 1; i <= 40; ++i)
  {
    const auto step = gas.advance(state, area * height * (1 - 0.3 * std::sin(0.1 * i)), 1e-3);
    CHECK(gas.exergy(step.state) - gas.exergy(state) ==
          Approx(step.work - step.heat_loss).margin(1e-12 * gas.exergy(state)).epsilon(0));
    CHECK(step.heat_loss >= 0);
    state = step.state;
  }
  // Gas at the temperature and pressure of the surroundings can do no work.
  CHECK(gas.exergy(gas.seal(1e-5, 0)) == Approx(0).margin(1e-15));
}

TEST_CASE("Heat time from the spacing of fibres", "[chamber]")
{
  // The cylinder cell at 200 kPa gauge, fibres of 10 um radius: 6 ms at 0.4 mm, 52 ms at 1 mm, 253 ms at 2 mm
  // with air data of another handbook; conductivity tables of air differ by 2 %.
  for (const auto &[spacing, expected] : {std::pair{0.4e-3, 6e-3}, {1e-3, 52e-3}, {2e-3, 253e-3}})
    CHECK(heat_time_between_fibres(spacing, 10e-6, 301325, 296.15) == Approx(expected).epsilon(0.03));
  CHECK(heat_time_between_fibres(1e-3, 10e-6, 2e5, 296.15) ==
        Approx(2 * heat_time_between_fibres(1e-3, 10e-6, 1e5, 296.15)).epsilon(1e-12));
  CHECK_THROWS_AS(heat_time_between_fibres(1e-4, 5e-5, 1e5, 296.15), InvalidParameter);
}
