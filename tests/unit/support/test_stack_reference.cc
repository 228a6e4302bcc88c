// SPDX-License-Identifier: Apache-2.0
// The stacked columns: one layer is the single column, a layer cut in two is still one layer, and two elastic
// layers share the energy as the balance says.
#include "tests/support/catch.h"
#include "tests/support/stack_reference.h"
#include "tests/unit/support/reference_foams.h"

using namespace solemech::tests;

TEST_CASE("one layer, whole or cut, is the single column", "[references]")
{
  ColumnDrop drop = bench_drop();
  drop.n_hits = 2;
  drop.rest = 0.5;
  const Column column = bench_column();
  const auto   whole = column_drop(full_foam(), column, drop);
  drop.step = 20e-6;
  const auto cut = stack_drop({{full_foam(), 10e-3}, {full_foam(), 15e-3}}, column.area, Lateral::free, drop);
  for (int i = 0; i < drop.n_hits; ++i)
  {
    CHECK(cut[i].peak_force == Approx(whole[i].peak_force).epsilon(2e-5));
    CHECK(cut[i].peak_compression == Approx(whole[i].peak_compression).epsilon(2e-5));
    CHECK(cut[i].contact_time == Approx(whole[i].contact_time).epsilon(2e-5));
    CHECK(cut[i].return_by_speed == Approx(whole[i].return_by_speed).epsilon(1e-4));
    CHECK(cut[i].return_by_height == Approx(whole[i].return_by_height).epsilon(1e-4));
    CHECK(cut[i].return_by_loop == Approx(whole[i].return_by_loop).epsilon(1e-4));
    CHECK(cut[i].layer_peak_compression[0] * 1.5 == Approx(cut[i].layer_peak_compression[1]).epsilon(1e-6));
    CHECK(cut[i].layer_dissipated[0] + cut[i].layer_dissipated[1] ==
          Approx(whole[i].relaxed + whole[i].slipped + whole[i].recovered).epsilon(1e-4));
    CHECK(std::abs(cut[i].residual) < 1e-5);
  }
}

TEST_CASE("a soft relaxing layer on a firm elastic one converges", "[references]")
{
  ColumnFoam soft = relaxing_foam(), firm = elastic_foam();
  soft.network = {{0.5e6, 6, 0}};
  soft.slipping = {{0.4, 0.03}};
  firm.network = {{1.5e6, 4, 0}};
  ColumnDrop drop = bench_drop();
  drop.step = 40e-6;
  const double area = bench_column().area;
  const auto   coarse = stack_drop({{soft, 12e-3}, {firm, 10e-3}}, area, Lateral::free, drop)[0];
  drop.step = 20e-6;
  const auto fine = stack_drop({{soft, 12e-3}, {firm, 10e-3}}, area, Lateral::free, drop)[0];
  CHECK(coarse.peak_force == Approx(fine.peak_force).epsilon(1e-5));
  CHECK(coarse.peak_compression == Approx(fine.peak_compression).epsilon(1e-5));
  CHECK(coarse.return_by_speed == Approx(fine.return_by_speed).epsilon(1e-4));
  CHECK(std::abs(fine.layer_dissipated[1]) < 2e-5);
  CHECK(fine.layer_dissipated[0] > 0.5);
}
