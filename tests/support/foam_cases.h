// SPDX-License-Identifier: Apache-2.0
// The problems of the reference solutions as cases of the program: foams, the homogeneous column between
// frictionless plates, and the bench problem B1.
#pragma once

#include "solver/case.h"
#include "tests/support/b1_reference.h"
#include "tests/support/column_reference.h"

#include <cmath>
#include <numbers>
#include <string>

namespace solemech::tests
{
/// The same foam as data of the program.
inline materials::Material foam_material(const ColumnFoam &foam, double density,
                                         const std::string &name = "foam")
{
  materials::FoamData data;
  for (const auto &term : foam.network)
    data.network.push_back({term.mu, term.alpha, term.beta});
  for (const auto &branch : foam.relaxing)
    data.relaxing.push_back({branch.share, branch.time});
  for (const auto &branch : foam.slipping)
    data.slipping.push_back({branch.share, branch.cap});
  data.relative_density = foam.relative_density;
  data.closed_cells = foam.closed_cells;
  data.gas_exponent = foam.gas_exponent;
  data.densification_modulus = foam.densification_modulus;
  data.densification_exponent = foam.densification_exponent;
  data.recovery_time = foam.recovery_time;
  materials::Material material;
  material.name = name;
  material.family = "foam";
  material.density = density;
  material.data = data;
  return material;
}

/// Weight or head with a flat face so wide that its rim never touches the column.
inline solver::Tup wide_plate(double column_radius)
{
  solver::Tup tup;
  tup.diameter = 4 * column_radius;
  tup.edge_radius = 2e-3;
  return tup;
}

/// A column so light that its waves carry no energy worth mentioning: 1 kg/m3 against a weight of kilograms.
inline constexpr double light_density = 1; // [kg/m3]

/// One layer on a frictionless ground. The rig is left to the caller.
inline solver::Case column_case(const ColumnFoam &foam, const Column &column)
{
  solver::Case input;
  input.label = "column";
  solver::Layer layer;
  layer.name = "foam";
  layer.material = foam_material(foam, light_density);
  layer.thickness = column.height;
  input.layers = {layer};
  input.plug.radius = std::sqrt(column.area / std::numbers::pi);
  input.plug.base = solver::Base::sliding;
  return input;
}

/// The foam of B1, with or without its branches.
inline ColumnFoam b1_foam(bool relaxing)
{
  ColumnFoam foam;
  foam.network = {{b1::mu, b1::alpha, b1::beta}};
  for (std::size_t i = 0; relaxing && i < b1::share.size(); ++i)
    foam.relaxing.push_back({b1::share[i], b1::time[i]});
  return foam;
}

inline solver::Tup b1_tup()
{
  solver::Tup tup;
  tup.diameter = 2 * b1::tup_radius;
  tup.edge_radius = b1::edge_radius;
  return tup;
}

/// Stack and plug of B1; the rig is left to the caller.
inline solver::Case b1_stack(bool relaxing)
{
  solver::Case input;
  input.label = "b1";
  solver::Layer layer;
  layer.name = "foam";
  layer.material = foam_material(b1_foam(relaxing), b1::density);
  layer.thickness = b1::height;
  input.layers = {layer};
  input.plug.radius = b1::radius;
  input.plug.base = solver::Base::bonded;
  input.gravity = b1::gravity;
  return input;
}

/// The drop of B1.
inline solver::Case b1_case(bool relaxing = true)
{
  solver::Case    input = b1_stack(relaxing);
  solver::DropRig rig;
  rig.tup = b1_tup();
  rig.mass = b1::mass;
  rig.height = b1::energy / (b1::mass * b1::gravity);
  input.rig = rig;
  return input;
}
} // namespace solemech::tests
