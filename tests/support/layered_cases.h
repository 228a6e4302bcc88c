// SPDX-License-Identifier: Apache-2.0
// Two invented layered stacks that a stack of columns solves exactly: one free to spread whose foams have no
// Poisson effect, one held at its side whose foams carry gas, densification and slip.
#pragma once

#include "tests/support/foam_cases.h"
#include "tests/support/stack_reference.h"
#include "tests/unit/support/reference_foams.h"

namespace solemech::tests
{
struct LayeredStack
{
  std::string             name;
  std::vector<StackLayer> layers; ///< foot side first
  Lateral                 lateral = Lateral::free;
  solver::Case            input; ///< the same as a case, without the rig
};

inline solver::Case layered_case(const std::vector<StackLayer> &layers, double area, double density)
{
  solver::Case input;
  input.label = "layers";
  for (const auto &[foam, height] : layers)
  {
    solver::Layer layer;
    layer.name = "layer " + std::to_string(input.layers.size() + 1);
    layer.material = foam_material(foam, density, layer.name);
    layer.thickness = height;
    input.layers.push_back(layer);
  }
  input.plug.radius = std::sqrt(area / std::numbers::pi);
  input.plug.base = solver::Base::sliding;
  return input;
}

/// Firm lid, soft core, middling bed; beta = 0 everywhere.
inline LayeredStack spreading_stack()
{
  ColumnFoam lid, core, bed;
  lid.network = {{1.1e6, 5, 0}};
  lid.relaxing = {{0.2, 3e-3}};
  core.network = {{0.45e6, 7, 0}};
  core.relaxing = {{0.30, 2e-3}, {0.20, 20e-3}};
  core.slipping = {{0.3, 0.03}, {0.3, 0.1}};
  bed.network = {{0.7e6, 4, 0}};
  bed.relaxing = {{0.15, 10e-3}};
  LayeredStack stack{"free to spread", {{lid, 5e-3}, {core, 12e-3}, {bed, 8e-3}}, Lateral::free, {}};
  stack.input = layered_case(stack.layers, bench_column().area, light_density);
  return stack;
}

/// Foams with gas, densification and slip over an elastic one, held at the side without friction.
inline LayeredStack held_stack()
{
  ColumnFoam upper = full_foam(), lower = full_foam(), bed = elastic_foam();
  upper.network = {{0.40e6, 8, 0.125}};
  lower.relative_density = 0.25;
  lower.slipping = {{0.2, 0.05}};
  LayeredStack stack{"held at the side", {{upper, 9e-3}, {lower, 10e-3}, {bed, 6e-3}}, Lateral::confined, {}};
  stack.input = layered_case(stack.layers, bench_column().area, light_density);
  stack.input.plug.side = solver::Side::shell;
  stack.input.plug.shell_stiffness = 1e12; // a micrometre of spread would take a megapascal
  return stack;
}

/// The stack under the bench weight.
inline solver::Case dropped_case(const LayeredStack &stack, const ColumnDrop &drop)
{
  solver::Case    input = stack.input;
  solver::DropRig rig;
  rig.tup = wide_plate(input.plug.radius);
  rig.mass = drop.mass;
  rig.height = drop.touch_speed * drop.touch_speed / (2 * drop.gravity);
  rig.discarded = drop.n_hits - 1;
  rig.rest = drop.rest;
  input.rig = rig;
  input.gravity = drop.gravity;
  return input;
}
} // namespace solemech::tests
