// SPDX-License-Identifier: Apache-2.0
#include "tests/support/unit_cases.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace solemech::tests
{
namespace
{
/// The engine's numbers are those of the standard; its distributions would not be.
class Chance
{
public:
  explicit Chance(unsigned number) : engine_(1000003u * (number + 1)) { engine_.discard(16); }

  double unit() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  double spread(double low, double high)
  {
    return low * std::pow(high / low, unit());
  } ///< even in the logarithm
  bool once_in(double share) { return unit() < share; }
  int  pick(int n) { return std::min(n - 1, static_cast<int>(n * unit())); }

private:
  std::mt19937_64 engine_;
};

materials::Material foam(Chance &chance)
{
  materials::FoamData data;
  const double        nu = chance.between(0, 0.25);
  data.network.push_back({chance.spread(0.3e6, 1.5e6), chance.between(2, 8), nu / (1 - 2 * nu)});
  data.relative_density = chance.between(0.08, 0.25);
  data.closed_cells = chance.between(0.5, 1);
  data.densification_modulus = chance.spread(5e3, 60e3);
  if (chance.once_in(0.7))
    data.relaxing = {{chance.between(0.05, 0.2), chance.spread(1e-3, 0.1)}};
  if (chance.once_in(0.5))
    data.slipping = {{chance.between(0.05, 0.3), chance.spread(0.02, 0.2)}};
  materials::Material material;
  material.name = material.family = "foam";
  material.density = chance.between(90, 280);
  material.data = data;
  return material;
}

materials::Material rubber(Chance &chance, double softest, double hardest, const char *name)
{
  materials::RubberData data;
  data.c10 = chance.spread(softest, hardest) / 6; // E = 6 c10
  data.bulk_modulus = 300 * 2 * data.c10;
  if (chance.once_in(0.5))
    data.relaxing = {{chance.between(0.05, 0.3), chance.spread(1e-3, 0.1)}};
  materials::Material material;
  material.name = material.family = name;
  material.density = chance.between(1100, 1200);
  material.data = data;
  return material;
}

materials::Material plate(Chance &chance, double softest, double stiffest)
{
  materials::Material material;
  material.name = material.family = "plate";
  material.density = chance.between(700, 1600);
  material.data = materials::PlateData{
    .youngs_modulus = chance.spread(softest, stiffest), .poisson_ratio = 0.3, .relaxing = {}};
  return material;
}

solver::Layer layer(const char *name, const materials::Material &material, double thickness)
{
  solver::Layer made;
  made.name = name, made.material = material, made.thickness = thickness;
  return made;
}

solver::AirUnit unit(Chance &chance, double diameter)
{
  solver::AirUnit made;
  made.diameter = diameter;
  made.film_thickness = chance.between(0.4e-3, 1.2e-3);
  made.film = rubber(chance, 12e6, 60e6, "film");
  const int state = chance.pick(5);
  made.state = state == 0   ? solver::ChamberState::open
               : state == 1 ? solver::ChamberState::leaking
                            : solver::ChamberState::sealed;
  if (made.state != solver::ChamberState::open && !chance.once_in(0.15))
    made.gauge_pressure = chance.between(20e3, 200e3);
  made.has_fibres = chance.once_in(0.5);
  // Without fibres a flat film of this stretch is still far from bursting: p a/(E t) at most 0.3.
  const double modulus = 6 * std::get<materials::RubberData>(made.film.data).c10;
  if (!made.has_fibres)
    made.gauge_pressure =
      std::min(made.gauge_pressure, 0.3 * modulus * made.film_thickness / (0.5 * diameter));
  made.outside_volume = chance.once_in(0.5) ? 0 : chance.between(0, 40e-6);
  if (made.state == solver::ChamberState::leaking)
    made.leak_diameter = chance.spread(0.2e-3, 20e-3);
  return made;
}

std::vector<solver::Layer> layers(Chance &chance, double radius)
{
  std::vector<solver::Layer> out;
  const bool                 bare = chance.once_in(0.15);
  if (!bare && chance.once_in(0.4))
    out.push_back(layer("board", plate(chance, 60e6, 500e6), chance.between(1.2e-3, 2.5e-3)));
  if (!bare)
    out.push_back(layer("topper", foam(chance), chance.between(3e-3, 12e-3)));
  out.push_back(layer("unit", foam(chance), chance.between(6e-3, 16e-3)));
  const double share = chance.once_in(0.2) ? 1.0 : chance.between(0.6, 0.95);
  out.back().unit = unit(chance, 2 * radius * share);
  if (chance.once_in(0.35))
    out.push_back(layer("plate", plate(chance, 1e9, 40e9), chance.between(0.8e-3, 1.6e-3)));
  if (!bare)
    out.push_back(layer("base", foam(chance), chance.between(3e-3, 10e-3)));
  if (!bare && chance.once_in(0.6))
  {
    out.push_back(layer("outsole", rubber(chance, 2e6, 8e6, "rubber"), chance.between(2e-3, 4e-3)));
    if (chance.once_in(0.4))
      out.back().area_share = chance.between(0.4, 0.8);
  }
  return out;
}

solver::Tup striker(Chance &chance)
{
  solver::Tup made;
  if (chance.once_in(0.25))
  {
    made.shape = solver::TupShape::spherical_ended;
    made.diameter = chance.between(40e-3, 60e-3);
    made.end_radius = made.diameter * chance.between(0.7, 1.5);
    made.edge_radius = 2e-3;
    return made;
  }
  made.diameter = chance.between(30e-3, 60e-3);
  made.edge_radius = chance.between(1e-3, 4e-3);
  return made;
}

solver::Rig drop(Chance &chance, double height, double gravity)
{
  solver::DropRig rig;
  rig.tup = striker(chance);
  rig.mass = chance.spread(0.8, 10);
  rig.height = height * chance.between(40, 200) / (rig.mass * gravity); // [J/m] of stack: 1 J to 5 J on 25 mm
  return rig;
}

solver::Rig press(Chance &chance, double height)
{
  solver::PressRig rig;
  rig.tup = striker(chance);
  if (chance.once_in(0.5))
    rig.peak = height * chance.between(0.1, 0.35);
  else
    rig.control = solver::PressControl::force, rig.peak = chance.between(100, 1500);
  rig.wave = chance.once_in(0.5) ? solver::PressWave::triangle : solver::PressWave::half_sine;
  rig.duration = chance.spread(0.1, 10);
  rig.cycles = 1 + chance.pick(2);
  return rig;
}

solver::Rig gauge(Chance &chance)
{
  static const materials::Gauge gauges[] = {materials::shore_a_gauge, materials::asker_c_gauge,
                                            materials::shore_oo_gauge};
  solver::DurometerRig          rig;
  rig.gauge = gauges[chance.pick(3)];
  rig.tup = solver::gauge_tip(rig.gauge);
  return rig;
}
} // namespace

solver::Case unit_case(unsigned number)
{
  Chance       chance(number);
  solver::Case input;
  input.label = "unit-" + std::to_string(number);
  input.accuracy = 0.03;
  input.plug.radius = chance.between(30e-3, 45e-3);
  input.layers = layers(chance, input.plug.radius);
  static constexpr solver::Base bases[] = {solver::Base::bonded, solver::Base::bonded, solver::Base::resting,
                                           solver::Base::clamped, solver::Base::sliding};
  input.plug.base = bases[chance.pick(5)];
  const int side = chance.pick(5);
  if (side == 0)
    input.plug.side = solver::Side::shell, input.plug.shell_stiffness = chance.spread(1e6, 1e8);
  if (side == 1)
  {
    input.plug.side = solver::Side::ring;
    input.plug.side_material = chance.once_in(0.5) ? rubber(chance, 2e6, 8e6, "rubber") : foam(chance);
    input.plug.side_thickness = chance.between(2e-3, 5e-3);
  }
  const double height = solver::stack_height(input.layers);
  switch (number % 3)
  {
  case 0:
    input.rig = drop(chance, height, input.gravity);
    break;
  case 1:
    input.rig = press(chance, height);
    break;
  default:
    input.rig = gauge(chance);
  }
  return input;
}
} // namespace solemech::tests
