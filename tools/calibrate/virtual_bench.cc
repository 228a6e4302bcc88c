// SPDX-License-Identifier: Apache-2.0
#include "tools/calibrate/virtual_bench.h"

#include "solver/results/catalogue.h"
#include "solver/run.h"

#include <string>

namespace solemech::tools
{
namespace
{
solver::Case pad_case(const materials::Material &material, double thickness, double radius, double accuracy)
{
  solver::Layer pad;
  pad.name = "pad";
  pad.material = material;
  pad.thickness = thickness;

  solver::Case bench;
  bench.label = material.name;
  bench.layers = {pad};
  bench.plug.radius = radius;
  bench.accuracy = accuracy;
  return bench;
}

BenchReading read(const solver::Case &bench, const std::string &name)
{
  const auto  result = solver::run(bench, {.progress = {}, .pictures = false});
  const auto *reading = result.find(name);
  return {reading->value, reading->error};
}
} // namespace

solver::Case pulse_case(const materials::Material &material, double accuracy)
{
  constexpr double head_diameter = 60e-3, edge_radius = 6e-3, thickness = 30e-3;

  solver::PressRig press;
  press.tup.diameter = head_diameter;
  press.tup.edge_radius = edge_radius;
  press.control = solver::PressControl::force;
  press.wave = solver::PressWave::half_sine;
  press.peak = 2000;
  press.duration = 185e-3;

  auto bench = pad_case(material, thickness, 0.5 * head_diameter + thickness, accuracy);
  bench.plug.base = solver::Base::bonded;
  bench.rig = press;
  return bench;
}

solver::Case ball_case(const materials::Material &material, double accuracy)
{
  solver::DropRig ball;
  ball.tup.shape = solver::TupShape::sphere;
  ball.tup.diameter = 16e-3;
  ball.mass = 16.8e-3;
  ball.height = 500e-3;

  auto bench = pad_case(material, 50e-3, 50e-3, accuracy);
  bench.rig = ball;
  return bench;
}

solver::Case gauge_case(const materials::Material &material, const materials::Gauge &gauge, double accuracy)
{
  solver::DurometerRig rig;
  rig.gauge = gauge;
  rig.tup = solver::gauge_tip(gauge);

  auto bench = pad_case(material, 50e-3, 50e-3, accuracy);
  bench.rig = rig;
  return bench;
}

const materials::Gauge &gauge_for(const materials::Material &material)
{
  return std::holds_alternative<materials::RubberData>(material.data) ? materials::shore_a_gauge
                                                                      : materials::asker_c_gauge;
}

BenchReading pulse_return(const materials::Material &material, double accuracy)
{
  return read(pulse_case(material, accuracy), solver::catalogue.loop_return);
}

BenchReading ball_rebound(const materials::Material &material, double accuracy)
{
  return read(ball_case(material, accuracy), solver::catalogue.rebound_by_height);
}

BenchReading gauge_reading(const materials::Material &material, const materials::Gauge &gauge,
                           double accuracy)
{
  return read(gauge_case(material, gauge, accuracy), solver::catalogue.hardness);
}
} // namespace solemech::tools
