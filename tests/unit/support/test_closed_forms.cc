// SPDX-License-Identifier: Apache-2.0
// The textbook solutions reproduce the worked tables they were taken from (numbers worked separately from the
// handbook formulas, printed to five or six digits; hence the tolerance).
#include "tests/support/catch.h"
#include "tests/support/closed_forms.h"

#include <cmath>
#include <numbers>

using namespace solemech::tests;

namespace
{
constexpr double printed_digits = 2e-5;
const double     touch_speed = std::sqrt(2 * 9.80665 * 0.05);

Approx table(double value, double tolerance = printed_digits)
{
  return Approx(value).epsilon(tolerance);
}
} // namespace

TEST_CASE("a mass falls 50 mm on a linear spring", "[references]")
{
  const Impact soft = spring_impact(8.5, 100e3, touch_speed, 9.80665);
  CHECK(soft.peak_force == table(1000.15));
  const Impact impact = spring_impact(8.5, 150e3, touch_speed, 9.80665);
  CHECK(impact.peak_force == table(1204.65));
  CHECK(impact.peak_compression == table(8.0310e-3));
  CHECK(impact.time_of_peak == table(12.38e-3, 5e-4));
  CHECK(spring_impact(8.5, 200e3, touch_speed, 0).peak_force == table(1291.17));
}

TEST_CASE("Kelvin-Voigt and Maxwell impacts reproduce their tables", "[references]")
{
  struct Row
  {
    double zeta, restitution, force, compression, maxwell_restitution, maxwell_force;
  };
  for (const auto &row : {Row{0.05, 0.85876, 0.93134, 0.92669, 0.85447, 0.92669},
                          Row{0.10, 0.74408, 0.88014, 0.86260, 0.72925, 0.86260},
                          Row{0.20, 0.57174, 0.82092, 0.75613, 0.52662, 0.75613},
                          Row{0.30, 0.45098, 0.81340, 0.67155, 0.37233, 0.67155}})
  {
    const Impact kelvin = kelvin_voigt_impact(1, 1, 2 * row.zeta, 1),
                 maxwell = maxwell_impact(1, 1, 0.5 / row.zeta, 1);
    CHECK(kelvin.restitution == table(row.restitution));
    CHECK(kelvin.peak_force == table(row.force));
    CHECK(kelvin.peak_compression == table(row.compression));
    CHECK(maxwell.restitution == table(row.maxwell_restitution));
    CHECK(maxwell.peak_force == table(row.maxwell_force));
  }
  // A very stiff damper leaves the spring alone, in either arrangement.
  CHECK(maxwell_impact(1, 1, 1e8, 1).peak_compression == table(1));
}

TEST_CASE("standard linear solid impacts reproduce their table", "[references]")
{
  struct Row
  {
    double k1, tau, force, compression, contact, restitution;
  };
  for (const auto &row : {Row{100e3, 10e-3, 1063.36, 6.8913e-3, 21.498e-3, 0.72126},
                          Row{50e3, 10e-3, 974.12, 7.8130e-3, 24.644e-3, 0.81442},
                          Row{100e3, 1e-3, 861.15, 8.4608e-3, 27.858e-3, 0.85892}})
  {
    const Impact impact = standard_linear_solid_impact(8.5, 100e3, row.k1, row.tau, 0.99028);
    CHECK(impact.peak_force == table(row.force));
    CHECK(impact.peak_compression == table(row.compression));
    CHECK(impact.contact_time == table(row.contact, 5e-5));
    CHECK(impact.restitution == table(row.restitution));
  }
  CHECK(standard_linear_solid_loss_tangent(100e3, 100e3, 10e-3, 100) == table(1. / 3));
}

TEST_CASE("the concrete floor of EN 14808 reads 6.6 kN", "[references]")
{
  const auto peak = force_reduction_reference(9.80665);
  CHECK(peak.raw == table(6767.9));
  CHECK(peak.filtered == table(6590, 1e-4));
}

TEST_CASE("foam columns reproduce the worked stresses and drops", "[references]")
{
  CHECK(foam_stress_free(1.05e6, 4, 0, 0.5) == table(984.375e3));
  CHECK(foam_stress_free(1.05e6, 4, 0.2, 0.4) == table(1203.301e3));
  CHECK(foam_stress_confined(1.05e6, 4, 0.2, 0.25) == table(805.782e3));
  CHECK(foam_energy_free(1.05e6, 4, 0, 0.25) == table(61.311e3));
  CHECK(foam_energy_free(1.05e6, 4, 0.2, 0.5) == table(363.301e3));
  CHECK(foam_shear_stress(1.05e6, 4, 0.5) == table(590.625e3));
  CHECK(foam_shear_stress(1.05e6, 2, 0.5) == table(525e3));
  CHECK(foam_hydrostatic_pressure(1.05e6, 4, 0, 0.7) == table(283.850e3));
  CHECK(foam_hydrostatic_pressure(1.05e6, 4, 0.2, 0.7) == table(740.545e3));
  CHECK(foam_stress_free(1, 8, 0, 0.5) == table(0.498047));
  CHECK(foam_stress_free(1, -2, 0, 0.5) == table(6));

  const double area = std::numbers::pi * 22.5e-3 * 22.5e-3;
  struct Row
  {
    double drop, height, nu, strain, force;
  };
  for (const auto &row : {Row{50e-3, 25e-3, 0, 0.35780, 1079.04}, Row{50e-3, 25e-3, 0.2, 0.30463, 1325.03},
                          Row{50e-3, 30e-3, 0, 0.32860, 990.92}, Row{70e-3, 25e-3, 0, 0.41890, 1273.06}})
  {
    const auto peak = foam_column_drop(1.05e6, 4, row.nu, area, row.height, 8.5, row.drop, 9.80665);
    CHECK(peak.strain == table(row.strain));
    CHECK(peak.force == table(row.force));
  }
  CHECK(foam_column_drop(1.05e6, 4, 0, area, 25e-3, 8.5, 50e-3, 9.80665, false).force == table(992.11));
}

TEST_CASE("gas columns reproduce the worked table", "[references]")
{
  struct Row
  {
    double n, force, work;
  };
  for (const auto &row : {Row{1.0, 476.325, 1.31780}, Row{1.2, 543.910, 1.41961}, Row{1.4, 618.765, 1.52866}})
  {
    CHECK(gas_column_force(15e-4, 10e-3, 150e3, 101325, row.n, 4e-3) == table(row.force));
    CHECK(gas_column_work(15e-4, 10e-3, 150e3, 101325, row.n, 4e-3) == table(row.work));
  }
  CHECK(gas_column_return_after_cooling(15e-4, 10e-3, 150e3, 101325, 1.4, 4e-3) == table(0.7417, 1e-4));
  CHECK(cell_gas_stress(101325, 0.16, 0.5, 1) == table(149.01e3, 5e-5));
  CHECK(cell_gas_stress(101325, 0.16, 0.5, 1.4) == table(258.12e3, 5e-5));
}

TEST_CASE("elastic bodies reproduce their worked numbers", "[references]")
{
  const auto bore = lame_cylinder(10e-3, 20e-3, 0.2e6, 10e6, 0.45, 10e-3, true);
  const auto rim = lame_cylinder(10e-3, 20e-3, 0.2e6, 10e6, 0.45, 20e-3, true);
  CHECK(bore.hoop_stress == table(0.33333e6));
  CHECK(bore.radial_stress == table(-0.2e6));
  CHECK(bore.displacement == table(0.396333e-3));
  CHECK(rim.hoop_stress == table(0.13333e6, 5e-5));
  CHECK(rim.displacement == table(0.212667e-3));
  CHECK(lame_cylinder(10e-3, 20e-3, 0.2e6, 10e6, 0.45, 10e-3, false).displacement == table(0.423333e-3));
  const auto sphere = lame_sphere(10e-3, 20e-3, 0.2e6, 10e6, 0.45, 10e-3);
  CHECK(sphere.hoop_stress == table(0.142857e6));
  CHECK(sphere.displacement == table(0.168571e-3));

  const auto ball = hertz_contact(2e6, 0.3, 25e-3, 2e-3);
  CHECK(ball.force == table(41.442));
  CHECK(ball.radius == table(7.0711e-3));
  CHECK(ball.peak_pressure == table(0.39574e6));
  const auto rebound = hertz_impact(2e6, 0.3, 8e-3, 16.8e-3, 3.1316);
  CHECK(rebound.peak_compression == table(3.615e-3, 5e-5));
  CHECK(rebound.peak_force == table(56.97, 5e-5));
  CHECK(rebound.contact_time == table(3.398e-3, 2e-4));

  CHECK(plate_stiffness(60e9, 0.3, 1e-3) == table(5.49451));
  CHECK(plate_centre_uniform(60e9, 0.3, 1e-3, 30e-3, 0.05e6, Rim::clamped) == table(0.115172e-3));
  CHECK(plate_centre_uniform(60e9, 0.3, 1e-3, 30e-3, 0.05e6, Rim::supported) == table(0.469547e-3));
  CHECK(plate_centre_point(60e9, 0.3, 1e-3, 30e-3, 20, Rim::clamped) == table(0.065174e-3));
  CHECK(plate_centre_point(60e9, 0.3, 1e-3, 30e-3, 20, Rim::supported) == table(0.165442e-3));
  CHECK(plate_on_springs(5.49451, 2e6 / 25e-3, 500) == table(2.98106e-3));
  CHECK(bonded_disc_ratio(45e-3, 25e-3) == table(1.405));
  CHECK(confined_modulus(2e6, 0.3) == table(0.107692e9 * 25e-3));
}
