// SPDX-License-Identifier: Apache-2.0
// Abrasion benches as a rig: volume against k F s, layers, lower bounds, the drum's depth and the warmth of a
// ground face against closed forms.
#include "solver/case.h"
#include "solver/resolution.h"
#include "solver/results/result.h"
#include "solver/rigs/abrasion.h"
#include "solver/run.h"
#include "tests/external/check.h"
#include "tests/support/rubber.h"

#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, mm3 = 1e-9, printed = 1e-3;

solver::Case piece(std::initializer_list<double> moduli, double thickness = 4 * mm)
{
  solver::Case input;
  for (const double modulus : moduli)
  {
    solver::Layer layer;
    layer.name = "layer-" + std::to_string(input.layers.size());
    layer.material = rubber(modulus);
    layer.thickness = thickness;
    input.layers.push_back(layer);
  }
  return input;
}

solver::AbrasionRig bench(solver::AbrasionTool tool)
{
  solver::AbrasionRig rig;
  rig.tool = tool;
  rig.sleeve = {.speed = 5000.0 / 60, .force = 2};
  rig.seconds = 10;
  rig.reference = "rubber", rig.reference_modulus = 4e6;
  rig.coefficient = 0.375 * mm3, rig.lowest = 0.125 * mm3, rig.highest = 1.125 * mm3;
  rig.conductivity = 0.25, rig.specific_heat = 1900;
  return rig;
}

double reading(const solver::Result &result, const char *name)
{
  const auto *found = result.find(name);
  REQUIRE(found);
  return found->value;
}
} // namespace

TEST_CASE("sleeve and drum take k F s")
{
  const auto sleeve = bench(solver::AbrasionTool::sleeve);
  const auto ground = solver::run_rig(piece({4e6}), sleeve, {}, {});
  // Archard 1953: pi 13 mm 5000/60 s = 3.4034 m/s; 2 N over 10 s: 68.068 N m; times 0.375 mm3/(N m).
  CHECK(reading(ground, "ground_volume") == Approx(25.525 * mm3).epsilon(printed));
  const auto drum = solver::run_rig(piece({4e6}), bench(solver::AbrasionTool::drum), {}, {});
  // ISO 4649 (formula from memory): 10 N, 40 m, piece of 16 mm.
  CHECK(reading(drum, "ground_depth") == Approx(0.746 * mm).epsilon(printed));
  CHECK(drum.input_energy == Approx(400).epsilon(1e-9)); // friction 1 times 10 N times 40 m
  CHECK(drum.ledger.at(0).values.back() + drum.ledger.at(1).values.back() == 0);
}

TEST_CASE("a rubber twice as stiff loses half the volume, and layers go one after the other")
{
  const auto sleeve = bench(solver::AbrasionTool::sleeve);
  const auto soft = solver::run_rig(piece({4e6}), sleeve, {}, {}),
             hard = solver::run_rig(piece({8e6}), sleeve, {}, {});
  // Ratner and Lancaster (from memory): loss goes with 1/E at equal strength, elongation and friction.
  CHECK(reading(hard, "ground_volume") == Approx(0.5 * reading(soft, "ground_volume")).epsilon(1e-6));
  const auto two = solver::run_rig(piece({4e6, 4e6}, 0.2 * mm), bench(solver::AbrasionTool::drum), {}, {}),
             one = solver::run_rig(piece({4e6}, 0.4 * mm), bench(solver::AbrasionTool::drum), {}, {});
  CHECK(reading(two, "ground_depth") == Approx(reading(one, "ground_depth")).epsilon(1e-12));
  // 0.4 mm of the 0.746 mm that 40 m take: through, hence a lower bound.
  CHECK(reading(two, "through_time") == Approx(127.32 * 0.4 / 0.746).epsilon(2e-3));
  CHECK(two.warnings.at(0).reading == "ground_depth");
  CHECK(soft.find("through_time") == nullptr);
}

TEST_CASE("what the bench found is told, and what is not known is refused")
{
  auto rig = bench(solver::AbrasionTool::sleeve);
  rig.found_depth = reading(solver::run_rig(piece({4e6}), rig, {}, {}), "ground_depth");
  const auto again = solver::run_rig(piece({4e6}), rig, {}, {});
  CHECK(reading(again, "found_loss") == Approx(0.375 * mm3).epsilon(1e-6));
  CHECK(reading(again, "found_over_expected") == Approx(1).epsilon(1e-6));
  auto drum = bench(solver::AbrasionTool::drum);
  drum.mass_lost = 120e-6, drum.cloth_loss = 190e-6;
  CHECK(reading(solver::run_rig(piece({4e6}), drum, {}, {}), "found_volume") ==
        Approx(109.84 * mm3).epsilon(printed));
  auto foam = piece({4e6});
  foam.layers[0].material.data = materials::FoamData();
  CHECK_THROWS_AS(solver::run_rig(foam, rig, {}, {}), materials::InvalidParameter);
  rig.sleeve.force = 0;
  CHECK_THROWS_AS(solver::run_rig(piece({4e6}), rig, {}, {}), materials::InvalidParameter);
}

TEST_CASE("warmth of a ground face", "[external]")
{
  const materials::HeatProperties outsole{0.25, 1150, 1900};
  external_check({"Carslaw & Jaeger, half-space under constant flux: rubber 0.25 W/(m K), 100 kW/m2",
                  "rise of a face that does not recede, 0.5 s", 107.96,
                  solver::ground_face_rise(outsole, 1e5, 0.5, 0), printed, "K"});
  // All the heat leaves with the debris: q/(rho c u) = 1e5/(1150 1900 1e-3).
  external_check({"energy balance of a steady receding face", "rise at 100 kW/m2 and 1 mm/s", 45.767,
                  solver::ground_face_rise(outsole, 1e5, 100, 1e-3), printed, "K"});
  const auto slow = solver::run_rig(piece({4e6}), bench(solver::AbrasionTool::sleeve), {}, {});
  auto       fast_rig = bench(solver::AbrasionTool::sleeve);
  fast_rig.sleeve.speed *= 2;
  const auto fast = solver::run_rig(piece({4e6}), fast_rig, {}, {});
  CHECK(reading(fast, "face_rise") >= reading(slow, "face_rise"));
}
