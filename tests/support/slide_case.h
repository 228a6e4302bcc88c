// SPDX-License-Identifier: Apache-2.0
// A bar of neo-Hookean rubber on a court of constant friction, as a case; and a run of it without its error.
#pragma once

#include "solver/run.h"
#include "tests/support/rubber.h"

namespace solemech::tests
{
/// Bar across which the slide goes, at 0.2 MPa and 0.5 m/s. Lengths in m; 3.6 MPa.
inline solver::Case sliding_bar(double friction, double width = 4e-3, double height = 3e-3,
                                double spacing = 9e-3)
{
  solver::SlideRig rig;
  rig.lug = {.width = width,
             .height = height,
             .spacing = spacing,
             .skin = 1.5e-3,
             .draft = 0.05,
             .edge_radius = 0.25e-3,
             .fillet = 0.5e-3,
             .worn_face = {}};
  rig.tup.diameter = rig.lug.spacing;
  rig.friction.mu_ref = friction;
  rig.court_heat = {0.18, 705, 1700}, rig.lug_heat = {0.2, 1150, 1900};
  rig.pressure = 0.2e6, rig.speed = 0.5, rig.distance = 20e-3;
  solver::Case data;
  data.label = "bar";
  data.layers.resize(2);
  data.layers[0].name = "skin", data.layers[0].material = rubber(3.6e6),
  data.layers[0].thickness = rig.lug.skin;
  data.layers[1].name = "lug", data.layers[1].material = rubber(3.6e6), data.layers[1].thickness = height;
  data.plug.section = solver::Section::plane_strain, data.plug.radius = 0.5 * rig.lug.spacing;
  data.rig = rig;
  return data;
}

/// One run at the wished mesh and step, without a second one for the error.
inline solver::RunOptions alone()
{
  solver::RunOptions options;
  options.estimate_error = false;
  return options;
}
} // namespace solemech::tests
