// SPDX-License-Identifier: Apache-2.0
// Stacks with an air unit, with and without fibres: shapes and forces of inflated units against membrane
// theory, the limits of a leak, and an answer for every stack that a bench can hold.
#include "geometry/errors.h"
#include "materials/errors.h"
#include "solver/models/stack_model.h"
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/result_reading.h"
#include "tests/support/unit_cases.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <numbers>

using namespace solemech;

namespace
{
constexpr double film_modulus = 24e6; // Young's, nearly incompressible [Pa]

materials::Material film()
{
  materials::RubberData data;
  data.c10 = film_modulus / 6;
  data.bulk_modulus = 300 * 2 * data.c10;
  materials::Material material;
  material.name = material.family = "film";
  material.density = 1150;
  material.data = data;
  return material;
}

materials::Material foam(double shear_modulus)
{
  materials::FoamData data;
  data.network = {{shear_modulus, 4, 0.2}};
  materials::Material material;
  material.name = material.family = "foam";
  material.density = 150;
  material.data = data;
  return material;
}

materials::Material stiff_ring()
{
  materials::Material material;
  material.name = material.family = "plate";
  material.density = 1500;
  material.data = materials::PlateData{.youngs_modulus = 50e9, .poisson_ratio = 0.3, .relaxing = {}};
  return material;
}

solver::AirUnit unit(double diameter, double film_thickness, double gauge_pressure, bool fibres)
{
  solver::AirUnit made;
  made.diameter = diameter;
  made.film_thickness = film_thickness;
  made.film = film();
  made.gauge_pressure = gauge_pressure;
  made.has_fibres = fibres;
  return made;
}

solver::Layer unit_layer(double thickness, const materials::Material &around, const solver::AirUnit &unit)
{
  solver::Layer layer;
  layer.name = "unit";
  layer.material = around;
  layer.thickness = thickness;
  layer.unit = unit;
  return layer;
}

solver::Layer foam_layer(const char *name, double thickness)
{
  solver::Layer layer;
  layer.name = name;
  layer.material = foam(0.8e6);
  layer.thickness = thickness;
  return layer;
}

solver::RunOptions quick()
{
  solver::RunOptions options;
  options.pictures = false;
  options.estimate_error = false;
  return options;
}

/// A flat tube of film, bare, lying loose on the ground.
constexpr double tube_width = 50e-3, tube_height = 8e-3, tube_film = 0.4e-3,
                 tube_pressure = 60e3; // [m], [Pa]

solver::Case tube()
{
  solver::Case input;
  input.plug.radius = 0.5 * tube_width;
  input.plug.section = solver::Section::plane_strain;
  input.plug.base = solver::Base::resting;
  input.plug.base_friction = 0;
  input.layers = {unit_layer(tube_height, foam(1e4), unit(tube_width, tube_film, tube_pressure, false))};
  input.accuracy = 0.01;
  return input;
}

/// Length of the middle line of the tube's film under a tension per depth [N/m], in plane strain.
double tube_length(double tension)
{
  const double drawn = 2 * (tube_width - tube_film) + 2 * (tube_height - tube_film);
  return drawn * (1 + tension / (film_modulus / 0.75 * tube_film));
}

/// Deflection over radius of a round membrane clamped at its rim under pressure, small strains and moderate
/// slopes (Hencky 1915): N_r w' = -p r/2, r (r N_r)'' ... integrated here in the form of Foeppl:
///   n' = m,  m' = -3 m/r - E t w'^2/(2 r^2),  rim: r m + (1 - nu) n = 0.
double hencky_deflection(double pressure_over_stiffness, double nu)
{
  // With all lengths over the radius and tensions over E t: shooting for the tension in the middle.
  const double q = pressure_over_stiffness; // p a/(E t)
  const auto   shoot = [&](double n0) {
    constexpr int n_steps = 4000;
    const double  h = 1.0 / n_steps;
    double        n = n0, m = 0, w = 0;
    for (int i = 0; i < n_steps; ++i)
    {
      const auto slope = [&](double r, double tension) { return -0.5 * q * r / tension; };
      const auto rate = [&](double r, double tension, double change) {
        const double s = slope(r, tension);
        return r > 0 ? -3 * change / r - 0.5 * s * s / (r * r) : 0.0;
      };
      const double r = i * h, middle = r + 0.5 * h;
      // midpoint rule; at the axis m' = -(q/n)^2/32 by symmetry
      const double m1 = r > 0 ? rate(r, n, m) : -q * q / (32 * n * n);
      const double nm = n + 0.5 * h * m, mm = m + 0.5 * h * m1;
      w += h * slope(middle, nm);
      n += h * mm;
      m += h * rate(middle, nm, mm);
    }
    return std::pair{m + (1 - nu) * n, -w};
  };
  double low = 1e-4 * std::pow(q, 2.0 / 3), high = 10 * std::pow(q, 2.0 / 3);
  for (int i = 0; i < 80; ++i)
  {
    const double middle = std::sqrt(low * high);
    (shoot(middle).first < 0 ? low : high) = middle;
  }
  return shoot(high).second;
}
} // namespace

TEST_CASE("a unit without fibres arches as Hencky's membrane does", "[units]")
{
  CHECK(hencky_deflection(1e-3, 0.3) ==
        Approx(0.653 * 0.1).epsilon(2e-3)); // 0.653 q^(1/3): handbooks, from memory
  // The upper film spans a stiff ring; the lower one lies on the base.
  constexpr double radius = 25e-3, thickness = 0.15e-3, pressure = 2e3;
  solver::Case     input;
  input.plug.radius = 35e-3;
  input.layers = {unit_layer(8e-3, stiff_ring(), unit(2 * radius, thickness, pressure, false))};
  solver::Tup puck;
  puck.diameter = 40e-3, puck.edge_radius = 2e-3;
  const solver::StackModel model(input, puck, 1.0, {1.2, 1.0});
  const double             clear = radius - thickness; // the side wall is bonded to the ring
  const double expected = clear * hencky_deflection(pressure * clear / (film_modulus * thickness), 0.5);
  // The film bends within sqrt(D/N) = 0.5 mm of its rim, a fiftieth of the radius.
  CHECK(model.rest_thickness[0] - 8e-3 == Approx(expected).epsilon(0.03));
  CHECK(model.touch_height == Approx(8e-3 + expected).epsilon(0.03));
  CHECK(model.chamber_facts[0].threshold_load == 0); // nothing holds the faces together
}

TEST_CASE("a tube of film is round before it is pressed, and pushes with its pressure on what lies flat",
          "[units]")
{
  auto        input = tube();
  solver::Tup plate;
  plate.diameter = 200e-3, plate.edge_radius = 2e-3;
  // Round: middle line of length pi D under the tension p D/2.
  double round = tube_length(0) / std::numbers::pi;
  for (int i = 0; i < 20; ++i)
    round = tube_length(0.5 * tube_pressure * round) / std::numbers::pi;
  {
    const solver::StackModel model(input, plate, 0.0, {1.2, 1.0});
    CHECK(model.touch_height ==
          Approx(round + tube_film).epsilon(0.01)); // corners of the drawn tube are thick
  }
  // Pressed by wide plates its sides are half circles; the film lies flat on (P - pi h)/2 of either.
  constexpr double travel = 12e-3;
  input.rig = solver::PressRig{.tup = plate, .peak = travel, .duration = 1, .table = {}};
  const auto  result = solver::run(input, quick());
  const auto &force = tests::curve(result, "force"), &way = tests::curve(result, "tup_displacement"),
             &pressure = tests::curve(result, "unit.gauge_pressure");
  CHECK(force.front() < 0.01 * *std::max_element(force.begin(), force.end()));
  const auto top = static_cast<std::size_t>(std::max_element(way.begin(), way.end()) - way.begin());
  for (const std::size_t at : {top / 2, top})
  {
    const double gap = round - way[at], p = pressure[at]; // between the middle lines of the films
    const double flat = 0.5 * (tube_length(0.5 * p * gap) - std::numbers::pi * gap);
    INFO("travel " << 1e3 * way[at] << " mm, pressure " << 1e-3 * p << " kPa");
    CHECK(force[at] ==
          Approx(p * flat).epsilon(0.03)); // the film bends: D/h^2 over p, and its corners are thick
  }
}

TEST_CASE("a leak of next to nothing is a sealed unit, a wide hole an open one", "[units]")
{
  solver::Case input;
  input.plug.radius = 40e-3;
  input.accuracy = 0.01;
  input.layers = {foam_layer("topper", 5e-3), unit_layer(8e-3, foam(0.8e6), unit(62e-3, 0.6e-3, 100e3, true)),
                  foam_layer("base", 6e-3)};
  solver::DropRig rig;
  rig.tup.diameter = 40e-3, rig.tup.edge_radius = 2e-3;
  rig.mass = 1.2, rig.height = 0.25;
  input.rig = rig;
  const auto of = [&](solver::ChamberState state, double hole, const char *name) {
    auto one = input;
    one.layers[1].unit->state = state, one.layers[1].unit->leak_diameter = hole;
    return tests::reading(solver::run(one, quick()), name);
  };
  using solver::ChamberState;
  for (const char *name : {"peak_force", "greatest_compression", "rebound_by_height"})
  {
    INFO(name);
    CHECK(of(ChamberState::leaking, 0.02e-3, name) ==
          Approx(of(ChamberState::sealed, 0, name)).epsilon(1e-3)); // a thousandth of the gas leaves
    // Gas leaves a hole of 50 mm in 0.1 ms, a hundredth of the contact.
    CHECK(of(ChamberState::leaking, 50e-3, name) == Approx(of(ChamberState::open, 0, name)).epsilon(0.02));
  }
}

TEST_CASE("the account of a leaking unit closes with what it held before", "[units]")
{
  solver::Case input;
  input.plug.radius = 40e-3;
  input.layers = {foam_layer("topper", 5e-3), unit_layer(8e-3, foam(0.8e6), unit(62e-3, 0.6e-3, 140e3, true)),
                  foam_layer("base", 6e-3)};
  input.layers[1].unit->state = solver::ChamberState::leaking;
  solver::DropRig  drop;
  solver::PressRig press;
  drop.tup.diameter = press.tup.diameter = 40e-3;
  drop.mass = 1.2, drop.height = 0.25;
  press.peak = 5e-3, press.duration = 2;
  for (const double hole : {0.5e-3, 3e-3, 20e-3})
    for (const solver::Rig &rig : {solver::Rig(drop), solver::Rig(press)})
    {
      INFO("hole " << 1e3 * hole << " mm");
      input.layers[1].unit->leak_diameter = hole;
      input.rig = rig;
      const auto   result = solver::run(input, quick());
      const double supplied = result.supplied_energy();
      // Exergy of air in the volume of the cavity: p V ln(p/p_a) - (p - p_a) V, textbook.
      const double p = 101325 + 140e3, volume = result.chambers[0].volume;
      const double exergy = p * volume * std::log(p / 101325) - 140e3 * volume;
      double       lost = 0, held = 0, held_before = 0;
      for (const auto &row : result.ledger)
      {
        if (row.type == solver::EnergyKind::dissipated)
          lost += row.values.back();
        if (row.type == solver::EnergyKind::stored)
          held += row.values.back(), held_before += row.values.front();
        if (row.part == "unit" && row.kind == "gas")
          CHECK(row.values.front() == Approx(exergy).epsilon(1e-6)); // rounding of the reading
        CHECK(row.values.back() <= supplied * (1 + 1e-6));
      }
      CHECK(supplied - result.input_energy ==
            Approx(held_before).epsilon(1e-9)); // film and fibres with the gas
      CHECK(held > -1e-3 * supplied);
      CHECK(lost <= supplied * (1 + 5e-3));
    }
}

TEST_CASE("a press driven by force over an open unit meets the one driven by travel", "[units]")
{
  for (const bool bare : {false, true})
    for (const bool fibres : {true, false})
    {
      INFO((bare ? "bare" : "built in") << (fibres ? ", fibres" : ", no fibres"));
      solver::Case input;
      input.plug.radius = 40e-3;
      auto open = unit(bare ? 80e-3 : 62e-3, 0.8e-3, 0, fibres);
      open.state = solver::ChamberState::open;
      input.layers = {unit_layer(8e-3, foam(0.8e6), open)};
      if (!bare)
        input.layers = {foam_layer("topper", 5e-3), input.layers[0], foam_layer("base", 6e-3)};
      solver::PressRig rig{.tup = {}, .peak = 4e-3, .duration = 1, .table = {}};
      rig.tup.diameter = 45e-3, rig.tup.edge_radius = 2e-3;
      input.rig = rig;
      const auto driven = solver::run(input, quick());
      rig.control = solver::PressControl::force, rig.peak = tests::reading(driven, "peak_force");
      input.rig = rig;
      const auto loaded = solver::run(input, quick());
      CHECK(tests::reading(loaded, "greatest_compression") ==
            Approx(4e-3).epsilon(1e-3)); // both in balance to 1e-3
    }
}

TEST_CASE("every scale reads a stack with a unit, and harder over more pressure", "[units]")
{
  for (const auto &gauge : {materials::shore_a_gauge, materials::asker_c_gauge, materials::shore_oo_gauge})
    for (const bool fibres : {true, false})
    {
      double before = 0;
      for (const double pressure : {20e3, 100e3, 200e3})
      {
        INFO("fibres " << fibres << ", " << 1e-3 * pressure << " kPa");
        solver::Case input;
        input.plug.radius = 40e-3;
        input.layers = {foam_layer("topper", 3e-3),
                        unit_layer(8e-3, foam(0.8e6), unit(62e-3, 0.6e-3, pressure, fibres)),
                        foam_layer("base", 6e-3)};
        solver::DurometerRig rig;
        rig.gauge = gauge, rig.tup = solver::gauge_tip(gauge);
        input.rig = rig;
        const double points = tests::reading(solver::run(input, quick()), "hardness");
        CHECK(points > before);
        before = points;
      }
    }
}

TEST_CASE("the tip of a gauge on an emptying unit comes to the end of its travel and says so", "[units]")
{
  solver::Case input;
  input.plug.radius = 40e-3;
  input.layers = {unit_layer(12e-3, foam(0.8e6), unit(52e-3, 0.65e-3, 130e3, true)),
                  foam_layer("base", 9e-3)};
  solver::DurometerRig rig;
  rig.gauge = materials::asker_c_gauge, rig.tup = solver::gauge_tip(rig.gauge);
  input.rig = rig;
  const auto full = solver::run(input, quick());
  input.layers[0].unit->state = solver::ChamberState::leaking, input.layers[0].unit->leak_diameter = 1e-3;
  const auto empty = solver::run(input, quick());
  for (const auto *result : {&full, &empty})
  {
    const double points = tests::reading(*result, "hardness");
    // By the definition of the scale: what is left of the travel, and the spring at it.
    CHECK(tests::reading(*result, "tip_depth") ==
          Approx((1 - points / 100) * rig.gauge.travel).epsilon(1e-9));
    CHECK(tests::reading(*result, "tip_force") == Approx(rig.gauge.force(points)).epsilon(1e-9));
  }
  // Three seconds after the tip is down the gas is out, and a bare film of this thickness does not bear 0.5
  // N.
  CHECK(tests::reading(full, "hardness") > 20);
  CHECK(tests::reading(empty, "hardness") == 0);
  CHECK(std::any_of(empty.warnings.begin(), empty.warnings.end(), [](const solver::Warning &warning) {
    return warning.text.find("went in fully") != std::string::npos;
  }));
}

TEST_CASE("every plausible stack with a unit gets an answer", "[many]")
{
  constexpr unsigned n_cases = 60;
  unsigned           n_answered = 0;
  for (unsigned i = 0; i < n_cases; ++i)
  {
    INFO("case " << i);
    try
    {
      const auto result = solver::run(tests::unit_case(i), quick());
      ++n_answered;
      for (const auto &reading : result.readings)
        CHECK(std::isfinite(reading.value));
    }
    catch (const solver::RunFailed &failure)
    {
      std::cout << "case " << i << " failed: " << failure.what() << '\n';
    }
  }
  CHECK(n_answered == n_cases);
}
