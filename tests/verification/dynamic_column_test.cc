// SPDX-License-Identifier: Apache-2.0
// A light, homogeneous column between frictionless plates: the finite-element drop against an independent
// integration of the same law (elastic; relaxing; with cell gas, densification and slip), two blows in a row,
// and against the energy balance of an Ogden-Hill foam worked by hand.
#include "solver/resolution.h"
#include "solver/rigs/drop.h"
#include "solver/run.h"
#include "tests/external/check.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/unit/support/reference_foams.h"

#include <fmt/format.h>

using namespace solemech;
using namespace solemech::tests;

namespace
{
// What the project promises for the column. Returns are shares: 0.1 % of the drop energy.
constexpr double promised = 0.001;
// One homogeneous strain state: the coarsest mesh carries it, the step alone decides.
const solver::Resolution fine{0.5, 0.125};
const solver::RunOptions plain{.progress = {}, .pictures = false};

struct Foam
{
  const char *name;
  ColumnFoam  foam;
};
const std::vector<Foam> &foams()
{
  static const std::vector<Foam> all{
    {"elastic", elastic_foam()}, {"relaxing", relaxing_foam()}, {"gas, densification, slip", full_foam()}};
  return all;
}

solver::Result dropped(const ColumnFoam &foam, const Column &column, const ColumnDrop &drop,
                       int discarded = 0)
{
  auto            input = column_case(foam, column);
  solver::DropRig rig;
  rig.tup = wide_plate(input.plug.radius);
  rig.mass = drop.mass;
  rig.height = drop.touch_speed * drop.touch_speed / (2 * drop.gravity);
  rig.discarded = discarded;
  rig.rest = drop.rest;
  input.rig = rig;
  input.gravity = drop.gravity;
  return solver::run_rig(input, rig, fine, plain);
}

/// Both the peaks as recorded, the times, and what is left of the speed.
void check_blow(const solver::Result &result, const ColumnHit &expected)
{
  // Without waves the raw peak is the peak.
  CHECK(reading(result, "peak_force_raw") == Approx(expected.peak_force).epsilon(promised));
  CHECK(reading(result, "greatest_compression") == Approx(expected.peak_compression).epsilon(promised));
  CHECK(reading(result, "contact_time") == Approx(expected.contact_time).epsilon(promised));
  CHECK(reading(result, "rebound_speed") == Approx(expected.loss_speed).epsilon(promised));
  CHECK(std::abs(reading(result, "rebound_by_height") - expected.return_by_height) <= promised);
  CHECK(std::abs(reading(result, "return_by_speed") - expected.return_by_speed) <= promised);
  CHECK(std::abs(reading(result, "return_by_loop") - expected.return_by_loop) <= promised);
}
} // namespace

TEST_CASE("the drop on a column is the integration of its law", "[column]")
{
  for (const auto &[name, foam] : foams())
  {
    INFO(name);
    check_blow(dropped(foam, bench_column(), bench_drop()),
               column_drop(foam, bench_column(), bench_drop())[0]);
  }
}

TEST_CASE("the second of two blows on a column is the integration of its law", "[column]")
{
  for (const auto &[name, foam] : foams())
    for (const double rest : {30.0, 0.5})
    {
      INFO(name << ", " << rest << " s of rest");
      ColumnDrop drop = bench_drop();
      drop.n_hits = 2;
      drop.rest = rest;
      check_blow(dropped(foam, bench_column(), drop, 1), column_drop(foam, bench_column(), drop)[1]);
    }
}

TEST_CASE("losses of each kind on a column are those of the integration", "[column]")
{
  const auto foam = full_foam();
  const auto result = dropped(foam, bench_column(), bench_drop());
  const auto expected = column_drop(foam, bench_column(), bench_drop())[0];
  const auto lost = [&](const std::string &kind) {
    double sum = 0;
    for (const auto &row : result.ledger)
      if (row.type == solver::EnergyKind::dissipated && row.kind == kind)
        sum += row.values.back();
    return sum;
  };
  const double energy = 5.0; // [J], of the drop: shares of it count
  CHECK(std::abs(lost("relaxing") - expected.relaxed) <= promised * energy);
  CHECK(std::abs(lost("slipping") - expected.slipped) <= promised * energy);
  CHECK(std::abs(lost("recovery") - expected.recovered) <= promised * energy);
}

TEST_CASE("an elastic foam stops where the energy balance says", "[column][external]")
{
  // 8.5 kg from 50 mm on a column of 45 mm diameter, Ogden-Hill pair of EVA (Verdejo & Mills 2004); worked by
  // hand with gravity acting throughout. The tolerance is that of the column above.
  const std::string source =
    "energy balance of an Ogden-Hill column; 1050 kPa, exponent 4 (EVA; Verdejo & Mills 2004)";
  struct Row
  {
    double poisson, drop_height, height, force, strain;
  };
  for (const auto &[poisson, drop_height, height, force, strain] :
       {Row{0, 0.05, 25e-3, 1079.04, 0.35780}, Row{0.2, 0.05, 25e-3, 1325.03, 0.30463},
        Row{0, 0.05, 30e-3, 990.92, 0.32860}, Row{0, 0.07, 25e-3, 1273.06, 0.41890}})
  {
    ColumnFoam foam;
    foam.network = {{1.05e6, 4, poisson / (1 - 2 * poisson)}};
    Column column = bench_column();
    column.height = height;
    constexpr double g = 9.80665;
    const auto       result =
      dropped(foam, column, {.mass = 8.5, .touch_speed = std::sqrt(2 * g * drop_height), .gravity = g});
    const auto what =
      fmt::format("8.5 kg from {:.0f} mm on {:.0f} mm of foam, Poisson ratio {}: ", 1e3 * drop_height,
                  1e3 * height, poisson);
    external_check({source, what + "peak force", force, reading(result, "peak_force_raw"), promised, "N"});
    external_check(
      {source, what + "peak strain", strain, reading(result, "greatest_compression") / height, promised});
  }
}
