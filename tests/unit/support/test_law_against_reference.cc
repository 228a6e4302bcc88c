// SPDX-License-Identifier: Apache-2.0
// The product's foam law and chamber gas against the independent references: point by point, and through a
// whole drop on a massless column with the product's own time splitting. No mesh is involved, so that a
// difference here is the law's and not the finite elements'.
#include "materials/chamber_gas.h"
#include "materials/foam.h"
#include "tests/support/catch.h"
#include "tests/support/gas_piston_reference.h"
#include "tests/unit/support/reference_foams.h"

using namespace solemech::tests;
namespace law = solemech::materials;

namespace
{
law::Foam product_foam(const ColumnFoam &foam)
{
  law::FoamData data;
  for (const auto &term : foam.network)
    data.network.push_back({term.mu, term.alpha, term.beta});
  for (const auto &term : foam.relaxing)
    data.relaxing.push_back({term.share, term.time});
  for (const auto &term : foam.slipping)
    data.slipping.push_back({term.share, term.cap});
  data.relative_density = foam.relative_density;
  data.closed_cells = foam.closed_cells;
  data.gas_exponent = foam.gas_exponent;
  data.densification_modulus = foam.densification_modulus;
  data.densification_exponent = foam.densification_exponent;
  data.recovery_time = foam.recovery_time;
  const law::ThermalData thermal;
  return law::make_foam(data, thermal, thermal.reference_temperature, foam.atmospheric_pressure);
}

struct DropReading
{
  double peak_force = 0, peak_compression = 0, loss_speed = 0;
};

/// Velocity-Verlet drop on a column of the product's law; sides free. Contact loss by linear interpolation.
DropReading law_drop(const law::Foam &foam, const Column &column, const ColumnDrop &drop, double dt)
{
  double                               x = 0, v = drop.touch_speed, force = 0, lateral = 0;
  std::vector<law::LogStrains<double>> elastic(foam.branches.size(), {0, 0, 0});
  law::LogStrains<double>              old{0, 0, 0};
  DropReading                          reading;
  for (bool over = false; !over;)
  {
    const double            a = drop.gravity - force / drop.mass, x_new = x + v * dt + a * dt * dt / 2;
    law::LogStrains<double> strains{std::log1p(-x_new / column.height), lateral, lateral};
    auto                    next = elastic;
    double                  axial_stress = 0;
    for (int i = 0; i < 30; ++i)
    {
      auto sum = foam.response(strains);
      for (std::size_t j = 0; j < elastic.size(); ++j)
      {
        const double            half = foam.branches[j].decay(dt / 2);
        law::LogStrains<double> trial;
        for (int k = 0; k < 3; ++k)
          trial[k] = half * elastic[j][k] + strains[k] - old[k];
        const auto push = foam.branches[j].push(trial, half);
        sum = sum + push.response;
        for (int k = 0; k < 3; ++k)
          next[j][k] = push.strain_factor * trial[k];
      }
      axial_stress = sum.stress[0];
      const double change =
        -(sum.stress[1] + sum.stress[2]) / (sum.moduli[1] + sum.moduli[2] + 2 * sum.moduli[5]);
      if (std::abs(change) < 1e-13)
        break;
      strains[1] += change;
      strains[2] += change;
    }
    const double force_new = -axial_stress / std::exp(strains[0]) * column.area;
    const double v_new = v + (a + drop.gravity - force_new / drop.mass) * dt / 2;
    over = force_new < 0;
    const double share = over ? force / (force - force_new) : 1;
    reading.loss_speed = -(v + share * (v_new - v));
    reading.peak_force = std::max(reading.peak_force, force_new);
    reading.peak_compression = std::max(reading.peak_compression, x_new);
    x = x_new, v = v_new, force = force_new, lateral = strains[1], old = strains, elastic = next;
  }
  return reading;
}
} // namespace

TEST_CASE("network, gas and densification agree with the second implementation", "[references]")
{
  ColumnFoam foam = full_foam();
  foam.network = {{0.4e6, 8, 0.125}, {0.1e6, -3, 0.0}, {0.05e6, 22, 0.4}};
  foam.gas_exponent = 1.2;
  foam.closed_cells = 0.6;
  foam.densification_exponent = 4;
  const auto product = product_foam(foam);
  for (const Strain strain :
       {Strain{-0.01, 0, 0.002}, Strain{-0.4, 0.1, 0.05}, Strain{-1.1, 0.02, 0.2}, Strain{0.3, -0.2, 0.1}})
  {
    const auto ours = product.response(law::LogStrains<double>{strain[0], strain[1], strain[2]});
    const auto ref = equilibrium(foam, strain);
    CHECK(ours.energy == Approx(ref.energy).epsilon(1e-9));
    constexpr std::array<std::array<int, 2>, 6> pairs{{{0, 0}, {1, 1}, {2, 2}, {0, 1}, {0, 2}, {1, 2}}};
    for (int a = 0; a < 3; ++a)
      CHECK(ours.stress[a] == Approx(ref.stress[a]).epsilon(1e-11));
    for (int i = 0; i < 6; ++i)
      CHECK(ours.moduli[i] == Approx(ref.moduli[pairs[i][0]][pairs[i][1]]).epsilon(1e-11));
  }
}

TEST_CASE("a drop on the product's law finds the reference, with every term", "[references]")
{
  // 0.1 ms is the program's usual step near contact loss; the finite-element drop is asked for 0.1 %.
  struct Row
  {
    ColumnFoam foam;
    double     tolerance;
  };
  for (const auto &row : {Row{elastic_foam(), 2e-4}, Row{relaxing_foam(), 2e-4}, Row{full_foam(), 1e-3}})
  {
    const auto hit = column_drop(row.foam, bench_column(), bench_drop())[0];
    const auto reading = law_drop(product_foam(row.foam), bench_column(), bench_drop(), 0.1e-3);
    CHECK(reading.peak_force == Approx(hit.peak_force).epsilon(row.tolerance));
    CHECK(reading.peak_compression == Approx(hit.peak_compression).epsilon(row.tolerance));
    CHECK(reading.loss_speed == Approx(hit.loss_speed).epsilon(row.tolerance));
    const auto fine = law_drop(product_foam(row.foam), bench_column(), bench_drop(), 5e-6);
    CHECK(fine.peak_force == Approx(hit.peak_force).epsilon(2e-5));
    CHECK(fine.peak_compression == Approx(hit.peak_compression).epsilon(2e-5));
    CHECK(fine.loss_speed == Approx(hit.loss_speed).epsilon(2e-5));
  }
}

TEST_CASE("a piston on the product's gas finds the reference", "[references]")
{
  const double speed = std::sqrt(2 * 9.80665 * 0.05), area = 25e-4, height = 15e-3, mass = 8.5, g = 9.80665;
  for (const double tau : {0., 1e-3, 10e-3, 50e-3, std::numeric_limits<double>::infinity()})
  {
    const auto hit = piston_drop({.area = area, .height = height, .gauge_pressure = 150e3, .heat_time = tau},
                                 {.mass = mass, .touch_speed = speed});
    const law::ChamberGas gas{.heat_time = tau};
    const double          dt = 5e-6;
    auto                  state = gas.seal(area * height, 150e3);
    double x = 0, v = speed, force = 150e3 * area, peak_pressure = 0, peak_compression = 0, heat_loss = 0;
    while (true)
    {
      const double a = g - force / mass, x_new = x + v * dt + a * dt * dt / 2;
      const double p = gas.pressure(state, area * (height - x_new), dt).pressure - 101325;
      v += (a + g - p * area / mass) * dt / 2;
      if (x_new < 0)
        break;
      const auto step = gas.advance(state, area * (height - x_new), dt);
      state = step.state;
      heat_loss += step.heat_loss;
      x = x_new, force = p * area;
      peak_pressure = std::max(peak_pressure, p);
      peak_compression = std::max(peak_compression, x);
    }
    CHECK(peak_pressure == Approx(hit.peak_gauge_pressure).epsilon(5e-5));
    CHECK(peak_compression == Approx(hit.peak_compression).epsilon(5e-5));
    CHECK(heat_loss == Approx(hit.heat_loss).epsilon(5e-4).margin(1e-9));
  }
}
