// SPDX-License-Identifier: Apache-2.0
// The energy account as a gate, over random cases of every rig with fixed numbers: drops on a block with a
// spring and a damper, gauges, slow presses, slides, wear. What is answered leaves less than half a per cent
// open, in the rows of the account and in the shares that people see; nothing fails for its account.
// Conservation of energy is the outside reference. Drops and presses of other kinds: tests/random.
#include "geometry/errors.h"
#include "materials/errors.h"
#include "solver/results/catalogue.h"
#include "solver/rig_parts.h"
#include "solver/run.h"
#include "solver/time/account.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/support/slide_case.h"
#include "tools/output/results/energy_picture.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <random>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double rounding = 1e-6; ///< of the energy put in, in the sum of all rows

/// The standard fixes the sequence of this engine, not that of its distributions.
class Draw
{
public:
  explicit Draw(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return low + (high - low) * engine_() / 4294967296.0; }
  double spread(double low, double high) { return low * std::pow(high / low, between(0, 1)); }

private:
  std::mt19937 engine_;
};

ColumnFoam foam(Draw &draw)
{
  ColumnFoam foam;
  foam.network = {{draw.spread(0.25e6, 1.5e6), draw.between(2, 10), draw.between(0, 0.5)}};
  foam.relative_density = draw.between(0.08, 0.3);
  foam.closed_cells = draw.between(0.5, 1);
  foam.densification_modulus = draw.spread(5e3, 60e3);
  foam.relaxing = {{draw.between(0.02, 0.3), draw.spread(1e-3, 1)}};
  foam.slipping = {{draw.between(0.05, 0.4), draw.spread(0.01, 0.3)}};
  return foam;
}

/// Two foams on a rubber of lugs.
solver::Case stack(Draw &draw)
{
  solver::Case input;
  const auto   add = [&](const char *name, const materials::Material &material, double thickness) {
    solver::Layer layer;
    layer.name = name, layer.material = material, layer.thickness = thickness;
    input.layers.push_back(layer);
  };
  add("upper", foam_material(foam(draw), draw.between(80, 300)), draw.between(6e-3, 18e-3));
  add("lower", foam_material(foam(draw), draw.between(80, 300)), draw.between(5e-3, 12e-3));
  add("outsole", rubber(draw.spread(2e6, 8e6)), draw.between(2e-3, 4e-3));
  input.layers.back().area_share = draw.between(0.4, 1);
  input.plug.radius = draw.between(30e-3, 50e-3);
  return input;
}

solver::Case drop_on_block(unsigned number)
{
  Draw            draw(number);
  solver::Case    input = stack(draw);
  solver::DropRig rig;
  rig.tup.diameter = draw.between(30e-3, 60e-3), rig.tup.edge_radius = 2e-3;
  rig.mass = draw.spread(1, 10);
  rig.height = stack_height(input.layers) * draw.between(40, 200) / (rig.mass * input.gravity);
  rig.base_mass = draw.spread(2, 80);
  rig.base_stiffness = draw.spread(2e4, 1e7);
  rig.base_damping = 2 * draw.between(0, 0.5) * std::sqrt(rig.base_mass * rig.base_stiffness);
  rig.guide_loss = number % 3 == 0 ? draw.between(0, 0.1) : 0;
  rig.hits = number % 4 == 0 ? 2 : 1;
  rig.rest = 2;
  input.rig = rig;
  return input;
}

solver::Case gauge(unsigned number)
{
  Draw         draw(number);
  solver::Case input = stack(draw);
  if (number % 2 == 0) // from the ground side, as an outsole is read
    std::reverse(input.layers.begin(), input.layers.end());
  input.layers.front().area_share = 1;
  static const materials::Gauge gauges[] = {materials::shore_a_gauge, materials::asker_c_gauge,
                                            materials::shore_oo_gauge};
  solver::DurometerRig          rig;
  rig.gauge = gauges[number % 3], rig.tup = solver::gauge_tip(rig.gauge);
  rig.read_after = draw.spread(0.1, 30);
  input.rig = rig;
  return input;
}

solver::Case slow_press(unsigned number)
{
  Draw             draw(number);
  solver::Case     input = stack(draw);
  solver::PressRig rig;
  rig.tup.diameter = draw.between(30e-3, 60e-3), rig.tup.edge_radius = 2e-3;
  rig.peak = stack_height(input.layers) * draw.between(0.05, 0.3);
  rig.duration = draw.spread(10, 300);
  rig.cycles = 1 + static_cast<int>(number % 2);
  input.rig = rig;
  return input;
}

solver::Case slide(unsigned number)
{
  Draw         draw(number);
  const double width = draw.between(2.5e-3, 6e-3);
  solver::Case input =
    sliding_bar(draw.between(0.2, 1), width, draw.between(1.5e-3, 4e-3), width * draw.between(1.6, 2.5));
  auto &rig = std::get<solver::SlideRig>(input.rig);
  rig.pressure = draw.spread(0.05e6, 0.5e6);
  rig.heading = draw.between(0, 1.5);
  return input;
}

solver::Case wear(unsigned number)
{
  solver::Case     input = slide(number);
  solver::WearLife life;
  life.reference_modulus = 3.6e6;
  life.coefficient = 1e-12, life.lowest = 0.3e-12, life.highest = 3e-12;
  life.depth = 0.1e-3, life.slip = 5e-3;
  std::get<solver::SlideRig>(input.rig).wear = life;
  return input;
}

void require_closed(const char *kind, solver::Case (*make)(unsigned), unsigned n_cases)
{
  double   most = 0;
  unsigned n_answers = 0;
  for (unsigned i = 0; i < n_cases; ++i)
  {
    solver::Case input = make(i);
    input.accuracy = 0.03; // quick: what a coarse run leaves open counts as well
    INFO(kind << " " << i);
    try
    {
      const auto result = solver::run(input, alone());
      ++n_answers;
      CHECK(solver::open_share(result) <= solver::most_open);
      CHECK(tools::unaccounted_text(input, result) == "");
      double sum = 0;
      for (const auto &row : result.ledger)
        sum += row.values.back();
      const double expected = std::holds_alternative<solver::DropRig>(input.rig) ? result.input_energy : 0;
      CHECK(std::abs(sum - expected) <= rounding * result.input_energy);
      most = std::max(most, solver::open_share(result));
    }
    catch (const solver::RunFailed &refusal)
    {
      CAPTURE(refusal.what());
      CHECK(std::string(refusal.what()).find("energy account") == std::string::npos);
      std::cout << kind << " " << i << " refused: " << refusal.what() << '\n';
    }
    catch (const materials::InvalidParameter &refusal)
    {
      std::cout << kind << " " << i << " refused: " << refusal.what() << '\n';
    }
    catch (const geometry::InvalidGeometry &refusal)
    {
      std::cout << kind << " " << i << " refused: " << refusal.what() << '\n';
    }
  }
  std::cout << kind << ": " << n_answers << " of " << n_cases << " answered, at most " << 100 * most
            << " % open\n";
  CHECK(n_answers >= 0.8 * n_cases);
}
} // namespace

TEST_CASE("accounts of drops on a block close", "[random]")
{
  require_closed("drop on a block", drop_on_block, 24);
}
TEST_CASE("accounts of gauges close", "[random]")
{
  require_closed("gauge", gauge, 24);
}
TEST_CASE("accounts of slow presses close", "[random]")
{
  require_closed("slow press", slow_press, 24);
}
TEST_CASE("accounts of slides close", "[random]")
{
  require_closed("slide", slide, 16);
}
TEST_CASE("accounts of wear close", "[random]")
{
  require_closed("wear", wear, 2);
}

TEST_CASE("a layer may be called as the rig calls its own: what is lost in it stays its own")
{
  const auto lost_below = [](const std::string &name) {
    Draw         draw(7);
    solver::Case input = stack(draw);
    input.accuracy = 0.03;
    input.layers[1].name = name;
    input.plug.base = solver::Base::resting;
    input.rig = solver::DropRig{};
    auto &rig = std::get<solver::DropRig>(input.rig);
    rig.tup.diameter = 40e-3, rig.tup.edge_radius = 2e-3, rig.mass = 2, rig.height = 0.1;
    const auto  result = solver::run(input, alone());
    const auto *lost = result.find(solver::catalogue.lost_in_part.of(name));
    REQUIRE(lost);
    REQUIRE(result.find(solver::catalogue.lost_in_part.of(solver::rig_part::ground)));
    return lost->value;
  };
  CHECK(lost_below("base") == lost_below("lower"));
}
