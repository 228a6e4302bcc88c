// SPDX-License-Identifier: Apache-2.0
// Layered stacks against stacked columns of the same laws, and the error that the program states against the
// true one, on these stacks and on B1.
#include "solver/resolution.h"
#include "solver/rigs/drop.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/layered_cases.h"
#include "tests/support/result_reading.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double         promised = 0.005;      // for layered stacks
constexpr double         reference_step = 5e-6; // [s]; halving it moves no reading by 1e-5
const solver::RunOptions plain{.progress = {}, .pictures = false};

std::vector<LayeredStack> stacks()
{
  return {spreading_stack(), held_stack()};
}

ColumnDrop drop_of(int n_hits)
{
  ColumnDrop drop = bench_drop();
  drop.step = reference_step;
  drop.n_hits = n_hits;
  drop.rest = 2;
  return drop;
}

double area_of(const LayeredStack &stack)
{
  return std::numbers::pi * stack.input.plug.radius * stack.input.plug.radius;
}
} // namespace

TEST_CASE("a layered stack drops like stacked columns", "[stack]")
{
  for (const auto &stack : stacks())
    for (const int n_hits : {1, 2})
    {
      INFO(stack.name << ", blow " << n_hits);
      const auto drop = drop_of(n_hits);
      const auto input = dropped_case(stack, drop);
      const auto result = solver::run_rig(input, std::get<solver::DropRig>(input.rig), {0.5, 0.25}, plain);
      const auto expected = stack_drop(stack.layers, area_of(stack), stack.lateral, drop).back();
      CHECK(reading(result, "peak_force_raw") == Approx(expected.peak_force).epsilon(promised));
      CHECK(reading(result, "greatest_compression") == Approx(expected.peak_compression).epsilon(promised));
      CHECK(reading(result, "contact_time") == Approx(expected.contact_time).epsilon(promised));
      CHECK(std::abs(reading(result, "rebound_by_height") - expected.return_by_height) <= promised);
      CHECK(std::abs(reading(result, "return_by_speed") - expected.return_by_speed) <= promised);
      CHECK(std::abs(reading(result, "return_by_loop") - expected.return_by_loop) <= promised);
      for (std::size_t i = 0; i < stack.layers.size(); ++i)
      {
        const std::string layer = input.layers[i].name;
        INFO(layer);
        CHECK(reading(result, "compression." + layer) ==
              Approx(expected.layer_peak_compression[i]).epsilon(promised));
        if (n_hits > 1)
          continue; // the ledger of a later blow counts from its touch
        const double loss = result.time_of_loss;
        CHECK(std::abs(energy_at(result, solver::EnergyKind::dissipated, loss, layer) -
                       expected.layer_dissipated[i]) <= promised * result.input_energy);
        CHECK(std::abs(energy_at(result, solver::EnergyKind::stored, loss, layer) -
                       expected.layer_stored_at_loss[i]) <= promised * result.input_energy);
      }
    }
}

TEST_CASE("the stated error covers the true one", "[accuracy]")
{
  const auto covered = [](const solver::Result &result, const std::string &name, double truth) {
    const auto *found = result.find(name);
    REQUIRE(found);
    INFO(name << ": true error " << found->value - truth << ", stated " << found->error);
    CHECK(std::abs(found->value - truth) <= found->error);
  };
  SECTION("on layered stacks, against stacked columns")
  {
    for (const auto &stack : stacks())
      for (const double accuracy : {0.02, 0.01, 0.005})
      {
        INFO(stack.name << ", accuracy " << accuracy);
        const auto drop = drop_of(1);
        auto       input = dropped_case(stack, drop);
        input.accuracy = accuracy;
        const auto result = solver::run(input, plain);
        const auto expected = stack_drop(stack.layers, area_of(stack), stack.lateral, drop)[0];
        covered(result, "peak_force_raw", expected.peak_force);
        covered(result, "greatest_compression", expected.peak_compression);
        covered(result, "contact_time", expected.contact_time);
        covered(result, "rebound_by_height", expected.return_by_height);
        covered(result, "return_by_speed", expected.return_by_speed);
        covered(result, "return_by_loop", expected.return_by_loop);
      }
  }
  SECTION("on B1, against a fine run")
  {
    const auto input = b1_case();
    const auto truth = solver::run_rig(input, std::get<solver::DropRig>(input.rig), {4.0, 0.25}, plain);
    for (const double accuracy : {0.02, 0.01, 0.005})
    {
      INFO("accuracy " << accuracy);
      auto wished = input;
      wished.accuracy = accuracy;
      const auto result = solver::run(wished, plain);
      for (const char *name : {"peak_force", "greatest_compression", "contact_time", "rebound_by_height",
                               "return_by_speed", "return_by_loop"})
        covered(result, name, reading(truth, name));
    }
  }
}
