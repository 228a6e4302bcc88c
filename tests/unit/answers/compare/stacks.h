// SPDX-License-Identifier: Apache-2.0
// Two invented stacks for tests of comparisons: a foam heel and a forefoot with an air unit, under one drop
// rig.
#pragma once

#include "solver/case.h"

namespace solemech::tests
{
inline materials::Material material(const std::string &name, const std::string &family, double modulus)
{
  materials::Material made;
  made.name = name;
  made.family = family;
  made.density = 200;
  if (family == "rubber")
    made.data = materials::RubberData{.c10 = modulus, .bulk_modulus = 1e9, .relaxing = {}};
  else if (family == "foam")
    made.data = materials::FoamData{
      .network = {{modulus, 6, 0.125}}, .relative_density = 0.2, .relaxing = {}, .slipping = {}};
  else
    made.data = materials::PlateData{.youngs_modulus = modulus, .poisson_ratio = 0.3, .relaxing = {}};
  return made;
}

inline solver::Layer layer(const std::string &name, const materials::Material &of, double millimetres)
{
  solver::Layer made;
  made.name = name;
  made.material = of;
  made.thickness = millimetres * 1e-3;
  return made;
}

inline solver::Case drop_on(const std::string &label, std::vector<solver::Layer> layers)
{
  solver::Case made;
  made.label = label;
  made.layers = std::move(layers);
  made.plug.radius = 0.037;
  solver::DropRig rig;
  rig.tup.diameter = 0.04;
  rig.tup.edge_radius = 0.003;
  rig.mass = 1.2;
  rig.height = 0.1;
  made.rig = rig;
  return made;
}

inline solver::Case heel()
{
  auto soft = layer("core", material("soft", "foam", 0.4e6), 16);
  soft.core_diameter = 0.054;
  soft.ring = material("firm", "foam", 0.8e6);
  return drop_on("heel", {layer("board", material("board", "board", 40e6), 1.5), soft,
                          layer("carrier", material("firm", "foam", 0.8e6), 7),
                          layer("skin", material("rubber", "rubber", 0.6e6), 2)});
}

inline solver::Case forefoot()
{
  auto unit = layer("unit", material("firm", "foam", 0.8e6), 8);
  unit.unit = solver::AirUnit{};
  unit.unit->diameter = 0.062;
  unit.unit->film_thickness = 0.6e-3;
  unit.unit->film = material("film", "film", 25e6);
  unit.unit->gauge_pressure = 140e3;
  auto made = drop_on("forefoot", {layer("board", material("board", "board", 40e6), 1.5),
                                   layer("topper", material("firm", "foam", 0.8e6), 4), unit,
                                   layer("plate", material("glass", "plate", 8e9), 1.2),
                                   layer("base", material("firm", "foam", 0.8e6), 4.5),
                                   layer("skin", material("hard rubber", "rubber", 0.8e6), 1.8)});
  made.plug.radius = 0.042;
  return made;
}
} // namespace solemech::tests
