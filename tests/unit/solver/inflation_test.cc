// SPDX-License-Identifier: Apache-2.0
// The inflated unit: film, fibres and gas are in balance before anything touches the stack.
#include "solver/models/inflation.h"
#include "solver/models/stack_model.h"
#include "tests/support/catch.h"

using namespace solemech;

namespace
{
materials::Material foam()
{
  materials::FoamData data;
  data.network = {{0.5e6, 4, 0.25}};
  materials::Material material;
  material.name = "foam";
  material.family = "foam";
  material.density = 150;
  material.data = data;
  return material;
}

materials::Material film()
{
  materials::RubberData data;
  data.c10 = 3e6;
  data.bulk_modulus = 2e9;
  data.relaxing = {{0.5, 0.01}};
  materials::Material material;
  material.name = "film";
  material.family = "film";
  material.density = 1150;
  material.data = data;
  return material;
}

solver::Case stack_with_unit(solver::Section section)
{
  solver::Case  input;
  solver::Layer lid, unit;
  lid.name = "lid", lid.material = foam(), lid.thickness = 5e-3;
  unit.name = "unit", unit.material = foam(), unit.thickness = 9e-3;
  unit.unit.emplace();
  unit.unit->diameter = 60e-3;
  unit.unit->film_thickness = 0.6e-3;
  unit.unit->film = film();
  unit.unit->gauge_pressure = 120e3;
  input.layers = {lid, unit};
  input.plug.radius = 40e-3;
  input.plug.section = section;
  return input;
}
} // namespace

TEST_CASE("an inflated unit is in balance before the blow", "[inflation]")
{
  const auto   section = GENERATE(solver::Section::axisymmetric, solver::Section::plane_strain);
  const double pressure = GENERATE(120e3, 5e3);
  auto         input = stack_with_unit(section);
  input.layers[1].unit->gauge_pressure = pressure;
  solver::Tup tup;
  tup.diameter = 45e-3, tup.edge_radius = 2e-3;
  solver::StackModel model(input, tup, 8.5, {});
  const auto         zero = solver::Vector::Zero(model.equation.size());
  solver::Vector     force;
  std::string        failed;
  model.equation.begin_step(zero, 1e-5);
  REQUIRE(model.equation.forces(zero, force, nullptr, failed));
  // Newton stopped at 1e-6 of pressure times section; the gas alone pushes with about that.
  const double load = pressure * model.mesh->mesh().chambers.front().drawn_area;
  CHECK(force.head(model.equation.n_unknowns()).norm() < 1e-5 * load);
  CHECK(model.chamber_facts.front().gauge_pressure == pressure);
  CHECK(model.chamber_facts.front().bulge > 0);
}

TEST_CASE("fibres of a unit without pressure hold nothing before the blow", "[inflation]")
{
  auto input = stack_with_unit(solver::Section::axisymmetric);
  input.layers[1].unit->gauge_pressure = 0;
  input.layers[1].unit->state = GENERATE(solver::ChamberState::open, solver::ChamberState::sealed);
  solver::Tup tup;
  tup.diameter = 45e-3, tup.edge_radius = 2e-3;
  const solver::StackModel model(input, tup, 8.5, {});
  const solver::Vector     rest = model.at_rest();
  CHECK(model.chambers.front().fibres->pull(rest) < 1e-9); // [N] rounding
}

TEST_CASE("fibres at their rest length carry the gauge pressure at the height of the chamber", "[inflation]")
{
  solver::AirUnit unit;
  unit.gauge_pressure = GENERATE(0.0, 1e3, 10e3, 20e3, 25e3, 120e3); // the law is bent below 20 kPa
  const double height = 8e-3, per_area = unit.fibre_stiffness / (unit.fibre_spacing * unit.fibre_spacing);
  const materials::TensileFibres fibres{per_area, solver::fibre_rest_length(unit, height), 0.1 * height};
  CHECK(fibres.response(height).tension == Approx(unit.gauge_pressure).epsilon(1e-9)); // rounding of lengths
}
