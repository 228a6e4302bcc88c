// SPDX-License-Identifier: Apache-2.0
// The piston on gas: worked table of 8.5 kg falling 50 mm at the isothermal and adiabatic ends, energy
// balance, and the order of the integration in between.
#include "tests/support/catch.h"
#include "tests/support/closed_forms.h"
#include "tests/support/gas_piston_reference.h"

#include <cmath>

using namespace solemech::tests;

namespace
{
const double touch_speed = std::sqrt(2 * 9.80665 * 0.05);

GasColumn gas_column(double gauge, double heat_time)
{
  return {.area = 25e-4, .height = 15e-3, .gauge_pressure = gauge, .heat_time = heat_time};
}
} // namespace

TEST_CASE("a piston without heat loss stops where the energy balance says", "[references]")
{
  struct Row
  {
    double gauge, sink_isothermal, force_isothermal, sink_adiabatic, force_adiabatic;
  };
  for (const auto &row : {Row{0, 13.483, 2252.1, 11.809, 1958.5}, Row{100e3, 9.294, 1069.8, 8.117, 1244.6},
                          Row{150e3, 7.671, 1032.7, 6.817, 1214.3}, Row{250e3, 5.502, 1133.8, 5.042, 1305.4}})
    for (const bool adiabatic : {false, true})
    {
      const double tau = adiabatic ? std::numeric_limits<double>::infinity() : 0;
      const auto   hit = piston_drop(gas_column(row.gauge, tau), {.mass = 8.5, .touch_speed = touch_speed});
      CHECK(hit.peak_compression * 1e3 ==
            Approx(adiabatic ? row.sink_adiabatic : row.sink_isothermal).epsilon(1e-4));
      CHECK(hit.peak_force == Approx(adiabatic ? row.force_adiabatic : row.force_isothermal).epsilon(1e-4));
      CHECK(hit.peak_compression ==
            Approx(gas_column_drop(25e-4, 15e-3, row.gauge, 101325, adiabatic ? 1.4 : 1, 8.5, 0.05, 9.80665))
              .epsilon(1e-6));
      CHECK(hit.return_by_speed == Approx(1).epsilon(1e-9));
    }
}

TEST_CASE("heat exchange costs energy most where its time is that of the push, and the balance closes",
          "[references]")
{
  double lowest = 1, lowest_at = 0;
  for (const double tau : {0.2e-3, 1e-3, 5e-3, 20e-3, 100e-3, 1.})
  {
    const auto hit = piston_drop(gas_column(150e3, tau), {.mass = 8.5, .touch_speed = touch_speed});
    CHECK(std::abs(hit.residual) < 1e-9 * 4.2);
    if (hit.return_by_speed < lowest)
    {
      lowest = hit.return_by_speed;
      lowest_at = tau;
    }
  }
  CHECK(lowest_at == 5e-3);
  CHECK(lowest == Approx(0.8188).epsilon(1e-4));
}

TEST_CASE("halving the step of the piston moves no reading", "[references]")
{
  for (const double stiffness : {std::numeric_limits<double>::infinity(), 2e6})
  {
    GasColumn gas = gas_column(150e3, 10e-3);
    gas.thread_stiffness = stiffness;
    gas.outside_volume = 20e-6;
    const auto coarse = piston_drop(gas, {.mass = 8.5, .touch_speed = touch_speed, .step = 5e-6});
    const auto fine = piston_drop(gas, {.mass = 8.5, .touch_speed = touch_speed, .step = 2.5e-6});
    CHECK(coarse.peak_force == Approx(fine.peak_force).epsilon(1e-6));
    CHECK(coarse.peak_compression == Approx(fine.peak_compression).epsilon(1e-6));
    CHECK(coarse.peak_temperature == Approx(fine.peak_temperature).epsilon(1e-6));
    CHECK(coarse.return_by_speed == Approx(fine.return_by_speed).epsilon(2e-6));
    CHECK(coarse.return_by_height == Approx(fine.return_by_height).epsilon(2e-6));
    CHECK(coarse.return_by_loop == Approx(fine.return_by_loop).epsilon(2e-6));
  }
}
