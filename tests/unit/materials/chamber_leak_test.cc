// SPDX-License-Identifier: Apache-2.0
// A hole in the chamber against the gas dynamics of an orifice (textbook closed forms).
#include "materials/chamber_leak.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

TEST_CASE("Choked flow has the handbook constant of air", "[leak]")
{
  // dm/dt sqrt(T)/(A p) = 0.0404 s K^0.5/m for air, Cd = 1 (from memory; three digits).
  const ChamberGas  gas{};
  const ChamberLeak hole{1e-3, 1};
  const auto        state = gas.seal(4e-5, 200e3);
  const double      mass_rate = -hole.rate(gas, state) / air::gas_constant,
               hole_area = std::numbers::pi / 4 * 1e-6;
  CHECK(mass_rate * std::sqrt(296.15) / (hole_area * state.pressure()) == Approx(0.0404).margin(5e-5));
}

TEST_CASE("Weak flow is that of an incompressible jet", "[leak]")
{
  // Bernoulli: dm/dt = Cd A sqrt(2 rho dp) as dp -> 0, either way.
  const ChamberGas  gas{};
  const ChamberLeak hole{1e-3, 0.6};
  const double      density = 101325 / (air::gas_constant * 296.15), hole_area = std::numbers::pi / 4 * 1e-6;
  const double      jet = 0.6 * hole_area * std::sqrt(2 * density * 100) * air::gas_constant;
  CHECK(hole.rate(gas, gas.seal(4e-5, 100)) == Approx(-jet).epsilon(1e-3)); // compressibility dp/p
  CHECK(hole.rate(gas, gas.seal(4e-5, -100)) == Approx(jet).epsilon(1e-3));
}

TEST_CASE("Choked blow-down of a rigid vessel follows its closed form", "[leak]")
{
  // Adiabatic vessel: p = p0 [1 + (g - 1)/2 t/t0]^(-2 g/(g - 1)), t0 = V/(Cd A c0) (2/(g + 1))^(-(g + 1)/(2
  // (g - 1))).
  const ChamberGas  gas{};
  const ChamberLeak hole{1e-3, 0.6};
  const auto        full = gas.seal(4e-5, 400e3);
  const double      c0 = std::sqrt(1.4 * air::gas_constant * 296.15), hole_area = std::numbers::pi / 4 * 1e-6;
  const double      t0 = 4e-5 / (0.6 * hole_area * c0) / std::pow(2 / 2.4, 3.0);
  const double      t = 0.5 * t0;
  const auto        out = hole.leak(gas, full, t);
  CHECK(out.state.pressure() / full.pressure() ==
        Approx(std::pow(1 + 0.2 * 0.5, -7.0)).epsilon(1e-6)); // fourth order
  CHECK(out.flow_loss == Approx(gas.exergy(full) - gas.exergy(out.state)).epsilon(1e-14));
}

TEST_CASE("A leak ends at atmospheric pressure from either side and never gains", "[leak]")
{
  const ChamberGas  gas{};
  const ChamberLeak hole{2e-3, 0.6};
  for (const double gauge : {300e3, 10e3, -40e3})
  {
    const auto out = hole.leak(gas, gas.seal(4e-5, gauge), 100);
    CHECK(out.state.pressure() == Approx(101325).epsilon(1e-12));
    CHECK(out.flow_loss > 0);
  }
  CHECK(ChamberLeak{0, 0.6}.leak(gas, gas.seal(4e-5, 300e3), 10).flow_loss == 0);
}

TEST_CASE("Choked isothermal blow-down is exponential", "[leak]")
{
  // dm/dt = -Cd A p sqrt(g/(R T)) (2/(g + 1))^((g + 1)/(2 (g - 1))) and m = p V/(R T).
  const ChamberGas  gas{};
  const ChamberLeak hole{1e-3, 0.6};
  const auto        full = gas.seal(4e-5, 400e3);
  const double      hole_area = std::numbers::pi / 4 * 1e-6;
  const double      mass_rate =
    0.6 * hole_area * std::sqrt(1.4 / (air::gas_constant * 296.15)) * std::pow(2 / 2.4, 3.0);
  const double t0 = 4e-5 / (air::gas_constant * 296.15 * mass_rate), t = 0.5 * t0;
  const auto   out = hole.leak(gas, full, t, true);
  CHECK(out.state.pressure() / full.pressure() == Approx(std::exp(-0.5)).epsilon(1e-6)); // fourth order
  CHECK(out.state.temperature == Approx(296.15).epsilon(1e-12));
}

TEST_CASE("A leak taken in one go or in many is the same", "[leak]")
{
  const ChamberGas  gas{};
  const ChamberLeak hole{3e-3, 0.6};
  for (const double gauge : {150e3, -30e3})
  {
    const auto start = gas.seal(2e-5, gauge);
    auto       many = start;
    for (int i = 0; i < 50; ++i)
      many = hole.leak(gas, many, 1e-4).state;
    const auto once = hole.leak(gas, start, 5e-3).state;
    CHECK(many.pressure() == Approx(once.pressure()).epsilon(1e-6));
    CHECK(many.amount == Approx(once.amount).epsilon(1e-6));
  }
}
