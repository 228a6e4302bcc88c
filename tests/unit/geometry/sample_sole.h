// SPDX-License-Identifier: Apache-2.0
// A sole of no shoe for tests: 290 mm long, foam on rubber, with a plate between.
#pragma once

#include "geometry/sole/sole_shape.h"

namespace solemech::tests
{
inline geometry::SoleShape sample_sole()
{
  geometry::SoleShape sole;
  sole.outline.length = 0.290;
  sole.outline.half_widths = {{0.024, 0.033, 0.031, 0.036, 0.044, 0.046, 0.032},
                              {0.024, 0.034, 0.036, 0.043, 0.050, 0.047, 0.030}};
  sole.bottom = {0.030, 0.004, 0.193, 0.012, 0};
  sole.layers.resize(3);
  sole.layers[0].thickness = {0.020, 0.022, 0.018, 0.012, 0.008};
  sole.layers[1].thickness.fill(0.0012);
  sole.layers[1].inset.fill(0.006);
  sole.layers[2].thickness.fill(0.003);
  return sole;
}
} // namespace solemech::tests
