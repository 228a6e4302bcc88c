// SPDX-License-Identifier: Apache-2.0
#include "tests/support/random_cases.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace solemech::tests
{
namespace
{
/// Random numbers that do not depend on the standard library: a mixing of counters (S. Vigna, splitmix64,
/// public domain; from memory).
class Dice
{
public:
  /// Neighbouring seeds must not give shifted copies of one sequence, hence the mixing of the seed.
  explicit Dice(std::uint64_t seed) : state_(mixed(~seed * 0xD1342543DE82EF95u)) {}

  double unit() { return static_cast<double>(mixed(state_ += 0x9E3779B97F4A7C15u) >> 11) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * unit(); }
  double spread(double low, double high) { return low * std::pow(high / low, unit()); } ///< even in the logarithm
  bool   chance(double share) { return unit() < share; }
  int    pick(int n) { return std::min(n - 1, static_cast<int>(n * unit())); }

private:
  static std::uint64_t mixed(std::uint64_t z)
  {
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }

  std::uint64_t state_;
};

materials::Material foam(Dice &dice)
{
  materials::FoamData data;
  const double        nu = dice.chance(0.3) ? 0.0 : dice.between(0, 0.25);
  data.network.push_back({dice.spread(0.25e6, 1.5e6), dice.between(2, 10), nu / (1 - 2 * nu)});
  if (dice.chance(0.8))
  {
    data.relative_density = dice.between(0.08, 0.3);
    data.closed_cells = dice.between(0.5, 1);
    data.densification_modulus = dice.spread(5e3, 60e3);
  }
  for (int i = dice.pick(4); i > 0; --i)
    data.relaxing.push_back({dice.between(0.02, 0.3), dice.spread(1e-4, 1)});
  for (int i = dice.pick(4); i > 0; --i)
    data.slipping.push_back({dice.between(0.05, 0.4), dice.spread(0.01, 0.3)});
  materials::Material material;
  material.name = "foam";
  material.family = "foam";
  material.density = dice.between(80, 300);
  material.data = data;
  return material;
}

materials::Material rubber(Dice &dice)
{
  materials::RubberData data;
  data.c10 = dice.spread(0.3e6, 1.5e6);
  data.bulk_modulus = dice.spread(200, 1000) * 2 * data.c10;
  if (dice.chance(0.5))
    data.relaxing.push_back({dice.between(0.05, 0.3), dice.spread(1e-3, 0.1)});
  materials::Material material;
  material.name = "rubber";
  material.family = "rubber";
  material.density = dice.between(1050, 1250);
  material.data = data;
  return material;
}

materials::Material film(Dice &dice)
{
  materials::Material material = rubber(dice);
  auto               &data = std::get<materials::RubberData>(material.data);
  data.c10 = dice.spread(2e6, 6e6); // thermoplastic, 12 to 36 MPa
  data.bulk_modulus = 100 * 2 * data.c10;
  material.name = material.family = "film";
  return material;
}

materials::Material plate(Dice &dice, double low, double high)
{
  materials::PlateData data{.youngs_modulus = dice.spread(low, high), .poisson_ratio = dice.between(0.2, 0.4),
                            .relaxing = {}};
  materials::Material  material;
  material.name = material.family = "plate";
  material.density = dice.between(600, 1600);
  material.data = data;
  return material;
}

solver::Layer layer(const char *name, const materials::Material &material, double thickness)
{
  solver::Layer made;
  made.name = name;
  made.material = material;
  made.thickness = thickness;
  return made;
}

solver::AirUnit air_unit(Dice &dice, double plug_radius)
{
  solver::AirUnit unit;
  unit.diameter = 2 * plug_radius * dice.between(0.6, 0.95);
  unit.film_thickness = dice.between(0.5e-3, 1.2e-3);
  unit.film = film(dice);
  const int state = dice.pick(5);
  unit.state = state == 0   ? solver::ChamberState::open
               : state == 1 ? solver::ChamberState::leaking
                            : solver::ChamberState::sealed;
  unit.gauge_pressure = unit.state == solver::ChamberState::open || dice.chance(0.1) ? 0 : dice.between(20e3, 220e3);
  unit.outside_volume = dice.chance(0.5) ? 0 : dice.between(0, 40e-6);
  if (dice.chance(0.3))
    unit.heat_time = dice.chance(0.3) ? std::numeric_limits<double>::infinity() : dice.spread(1e-3, 0.3);
  unit.leak_diameter = unit.state == solver::ChamberState::leaking ? dice.spread(0.2e-3, 2e-3) : 0;
  unit.has_fibres = unit.gauge_pressure > 0;
  return unit;
}

solver::Tup tup(Dice &dice)
{
  solver::Tup made;
  switch (dice.pick(5))
  {
    case 0:
      made.shape = solver::TupShape::sphere;
      made.diameter = dice.between(40e-3, 80e-3);
      break;
    case 1:
      made.shape = solver::TupShape::spherical_ended;
      made.diameter = dice.between(40e-3, 60e-3);
      made.end_radius = made.diameter * dice.between(0.7, 2);
      made.edge_radius = 2e-3;
      break;
    default:
      made.diameter = dice.between(30e-3, 60e-3);
      made.edge_radius = dice.between(1e-3, 4e-3);
  }
  if (dice.chance(0.3))
    made.friction = dice.between(0.1, 0.7);
  return made;
}
} // namespace

solver::Case random_case(unsigned number)
{
  Dice         dice(number);
  solver::Case input;
  input.label = "random-" + std::to_string(number);
  auto &layers = input.layers;
  input.plug.radius = dice.between(30e-3, 50e-3);

  if (dice.chance(0.3))
    layers.push_back(layer("insert", foam(dice), dice.between(3e-3, 6e-3)));
  if (dice.chance(0.4))
    layers.push_back(layer("board", plate(dice, 50e6, 500e6), dice.between(1.2e-3, 2.5e-3)));
  layers.push_back(layer("upper foam", foam(dice), dice.between(6e-3, 20e-3)));
  if (dice.chance(0.3))
  {
    layers.back().core_diameter = 2 * input.plug.radius * dice.between(0.4, 0.8);
    layers.back().ring = foam(dice);
  }
  if (dice.chance(0.4))
  {
    layers.push_back(layer("unit", foam(dice), dice.between(8e-3, 16e-3)));
    layers.back().unit = air_unit(dice, input.plug.radius);
  }
  if (dice.chance(0.35))
    layers.push_back(layer("plate", plate(dice, 1e9, 60e9), dice.between(0.8e-3, 1.6e-3)));
  if (dice.chance(0.5))
    layers.push_back(layer("lower foam", foam(dice), dice.between(5e-3, 15e-3)));
  if (dice.chance(0.6))
  {
    layers.push_back(layer("outsole", rubber(dice), dice.between(2e-3, 4e-3)));
    if (dice.chance(0.4))
      layers.back().area_share = dice.between(0.3, 0.8);
  }

  switch (dice.pick(5))
  {
    case 0:
      input.plug.side = solver::Side::shell;
      input.plug.shell_stiffness = dice.spread(1e6, 1e8);
      break;
    case 1:
      input.plug.side = solver::Side::ring;
      input.plug.side_material = dice.chance(0.5) ? rubber(dice) : foam(dice);
      input.plug.side_thickness = dice.between(2e-3, 5e-3);
      break;
    default:
      break;
  }
  static constexpr solver::Base bases[] = {solver::Base::bonded, solver::Base::bonded, solver::Base::resting,
                                           solver::Base::clamped, solver::Base::sliding};
  input.plug.base = bases[dice.pick(5)];
  if (dice.chance(0.15) && input.plug.side == solver::Side::free)
    input.plug.section = solver::Section::plane_strain;

  double height = 0;
  for (const auto &one : layers)
    height += one.thickness;
  if (dice.chance(0.75))
  {
    solver::DropRig rig;
    rig.tup = tup(dice);
    rig.mass = dice.spread(0.8, 10);
    // Per plug height: 40 J/m for 1 J on 25 mm to 240 J/m for 6 J.
    const double energy = height * dice.between(40, 240);
    rig.height = energy / (rig.mass * input.gravity);
    rig.guide_loss = dice.chance(0.3) ? dice.between(0, 0.1) : 0;
    rig.hits = dice.chance(0.15) ? 2 : 1;
    rig.rest = dice.between(0.5, 30);
    input.rig = rig;
  }
  else
  {
    solver::PressRig rig;
    rig.tup = tup(dice);
    if (dice.chance(0.5))
      rig.peak = height * dice.between(0.1, 0.4);
    else
    {
      rig.control = solver::PressControl::force;
      rig.peak = dice.between(200, 2000);
    }
    rig.wave = dice.chance(0.5) ? solver::PressWave::triangle : solver::PressWave::half_sine;
    rig.duration = dice.spread(0.1, 10);
    rig.cycles = 1 + dice.pick(2);
    input.rig = rig;
  }
  return input;
}
} // namespace solemech::tests
