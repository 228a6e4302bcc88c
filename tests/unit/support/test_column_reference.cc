// SPDX-License-Identifier: Apache-2.0
// The foam-column reference: against closed forms where they exist, and against itself (step, ledger, the
// other way of stepping) where they do not.
#include "tests/support/catch.h"
#include "tests/support/closed_forms.h"
#include "tests/unit/support/reference_foams.h"

using namespace solemech::tests;

TEST_CASE("an elastic column stops where the energy balance says", "[references]")
{
  // Ogden-Hill pair of EVA (Verdejo & Mills 2004); peak force worked by hand from the energy balance.
  for (const auto &[nu, force, strain] :
       {std::array{0., 1079.04, 0.35780}, std::array{0.2, 1325.03, 0.30463}})
  {
    ColumnFoam foam;
    foam.network = {{1.05e6, 4, nu / (1 - 2 * nu)}};
    const auto hit =
      column_drop(foam, bench_column(), {.mass = 8.5, .touch_speed = std::sqrt(2 * 9.80665 * 0.05)})[0];
    CHECK(hit.peak_force == Approx(force).epsilon(1e-5));
    CHECK(hit.peak_compression / 25e-3 == Approx(strain).epsilon(2e-5));
    CHECK(hit.return_by_speed == Approx(1).epsilon(1e-9));
    CHECK(hit.return_by_height == Approx(1).epsilon(1e-9));
    CHECK(hit.return_by_loop == Approx(1).epsilon(1e-9));
  }
}

TEST_CASE("small strain makes the column a standard linear solid", "[references]")
{
  // Confined, one branch of the same modulus as the network: M A/h against k_inf = k1. Light, slow mass, so
  // that the strain stays at 1e-4 and the force follows the exponentials of the linear solution.
  ColumnFoam foam;
  foam.network = {{1e6, 2, 0.5}};
  foam.relaxing = {{1.0, 10e-3}};
  const double k = (foam.bulk_modulus() + 4. / 3 * foam.shear_modulus()) * 1e-3 / 25e-3;
  const double m = 8.5 * k / 100e3, v = 3e-4;
  const auto   hit =
    column_drop(foam, {1e-3, 25e-3, Lateral::confined}, {.mass = m, .touch_speed = v, .gravity = 0})[0];
  const Impact linear = standard_linear_solid_impact(m, k, k, 10e-3, v);
  CHECK(hit.peak_force == Approx(linear.peak_force).epsilon(2e-4));
  CHECK(hit.peak_compression == Approx(linear.peak_compression).epsilon(2e-4));
  CHECK(hit.contact_time == Approx(linear.contact_time).epsilon(2e-4));
  CHECK(hit.return_by_speed == Approx(linear.restitution * linear.restitution).epsilon(4e-4));
}

TEST_CASE("slip alone loses the area of the loop", "[references]")
{
  // Uniaxial and small: r = sqrt(2 (1 + nu)) eps; loaded to r_max > 2 c from rest and back, the branch loses
  // g mu c [(r_max - c) + (r_max - 2 c)] per volume. nu = 0.2; recovery off.
  ColumnFoam foam;
  foam.network = {{1e6, 2, 0.2 / 0.6}};
  foam.slipping = {{0.1, 1e-4}};
  foam.recovery_time = std::numeric_limits<double>::infinity();
  const double eps = 5e-4, r_max = std::sqrt(2 * 1.2) * eps, c = 1e-4;
  const Column column{1e-3, 25e-3};
  const auto   hit = column_press(foam, column, eps * column.height, 0.1, 1e-5);
  // Force is zero, and the press leaves, a little before the plate is back: the last c-wide piece is not run.
  const double expected = 0.1 * 1e6 * c * ((r_max - c) + (r_max - 2 * c)) * column.area * column.height;
  const double not_run =
    0.1 * 1e6 * c * std::sqrt(2 * 1.2) * hit.loss_compression / column.height * column.area * column.height;
  CHECK(hit.slipped == Approx(expected - not_run).epsilon(2e-3));
  CHECK(column_press(foam, column, eps * column.height, 10., 1e-3).slipped ==
        Approx(hit.slipped).epsilon(1e-6));
}

TEST_CASE("the full law converges, and its ledger closes", "[references]")
{
  ColumnDrop drop = bench_drop();
  drop.n_hits = 3;
  drop.rest = 0.5;
  for (const auto &foam : {relaxing_foam(), full_foam()})
  {
    drop.step = 20e-6;
    const auto coarse = column_drop(foam, bench_column(), drop);
    drop.step = 5e-6;
    const auto fine = column_drop(foam, bench_column(), drop);
    for (int i = 0; i < drop.n_hits; ++i)
    {
      CHECK(coarse[i].peak_force == Approx(fine[i].peak_force).epsilon(1e-5));
      CHECK(coarse[i].peak_compression == Approx(fine[i].peak_compression).epsilon(1e-5));
      CHECK(coarse[i].contact_time == Approx(fine[i].contact_time).epsilon(1e-5));
      CHECK(coarse[i].return_by_speed == Approx(fine[i].return_by_speed).epsilon(1e-5));
      CHECK(coarse[i].return_by_height == Approx(fine[i].return_by_height).epsilon(1e-5));
      CHECK(coarse[i].return_by_loop == Approx(fine[i].return_by_loop).epsilon(1e-5));
      CHECK(std::abs(fine[i].residual) < 1e-8);
    }
  }
}

TEST_CASE("readings of the full foam over three hits", "[references]")
{
  // Recorded from this reference; they guard it against change, the tests above say that it is right.
  ColumnDrop drop = bench_drop();
  drop.n_hits = 2;
  drop.rest = 0.5;
  const auto hits = column_drop(full_foam(), bench_column(), drop);
  CHECK(hits[0].peak_force == Approx(1119.236).epsilon(1e-5));
  CHECK(hits[0].peak_compression == Approx(9.49381e-3).epsilon(1e-5));
  CHECK(hits[0].return_by_height == Approx(0.316225).epsilon(1e-5));
  CHECK(hits[1].touch_compression == Approx(1.225425e-3).epsilon(1e-5));
  CHECK(hits[1].peak_force == Approx(1208.247).epsilon(1e-5));
  CHECK(hits[1].touch_speed ==
        Approx(std::sqrt(10 / 8.5 + 2 * 9.81 * hits[1].touch_compression)).epsilon(1e-12));
  drop.from_current_surface = true;
  CHECK(column_drop(full_foam(), bench_column(), drop)[1].touch_speed ==
        Approx(bench_drop().touch_speed).epsilon(1e-12));
}

TEST_CASE("steps under given force agree with steps under given motion", "[references]")
{
  // The force that the press reads, given back as a history, must bring the compression of the press.
  for (const Lateral lateral : {Lateral::free, Lateral::plane_strain, Lateral::confined})
  {
    Column column = bench_column();
    column.lateral = lateral;
    const auto press = column_press(full_foam(), column, 10e-3, 30e-3, 5e-6);
    const auto force = [&](double time) {
      const auto   after = std::upper_bound(press.time.begin(), press.time.end(), time);
      const auto   i = std::clamp<std::ptrdiff_t>(after - press.time.begin(), 1, press.time.size() - 1);
      const double share = (time - press.time[i - 1]) / (press.time[i] - press.time[i - 1]);
      return press.force[i - 1] + std::min(1., share) * (press.force[i] - press.force[i - 1]);
    };
    const auto pulse = column_force_pulse(full_foam(), column, force, press.contact_time, 20000);
    CHECK(pulse.peak_compression == Approx(10e-3).epsilon(3e-5));
    CHECK(pulse.loss_compression == Approx(press.loss_compression).epsilon(3e-4));
    CHECK(pulse.return_by_loop == Approx(press.return_by_loop).epsilon(1e-4));
  }
}

TEST_CASE("stress is the derivative of energy, moduli that of stress", "[references]")
{
  ColumnFoam foam = full_foam();
  foam.gas_exponent = 1.3;
  foam.closed_cells = 0.7;
  const Strain strain{-0.5, 0.1, 0.05};
  const auto   point = equilibrium(foam, strain);
  const double h = 1e-5;
  for (int a = 0; a < 3; ++a)
  {
    Strain up = strain, down = strain;
    up[a] += h;
    down[a] -= h;
    const auto above = equilibrium(foam, up), below = equilibrium(foam, down);
    CHECK((above.energy - below.energy) / (2 * h) == Approx(point.stress[a]).epsilon(1e-7));
    for (int b = 0; b < 3; ++b)
      CHECK((above.stress[b] - below.stress[b]) / (2 * h) == Approx(point.moduli[b][a]).epsilon(1e-7));
  }
}
