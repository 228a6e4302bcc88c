// SPDX-License-Identifier: Apache-2.0
// A whole sole on the benches that bend it: its long section with cells where rollers and pads meet it, and a
// bench that stands where the measurements of the sole say.
#pragma once

#include "solver/rigs/bend.h"
#include "solver/rigs/flexion.h"
#include "solver/sole.h"

namespace solemech::solver
{
struct SoleBend
{
  LongSection section;
  BendRig     rig;
};

/// The nose over the ball line, supports on both sides of it.
/// @param rig    span and rollers; its place and plate are filled in
/// @param level  cell sizes are divided by it
/// Throws InvalidGeometry when a support would stand beyond the sole.
SoleBend bend_of(const Sole &sole, BendRig rig, double level);

struct SoleFlexion
{
  LongSection section;
  FlexionRig  rig;
};

/// About the ball line at the height of the floor; the roller lifts at 0.8 of the way from there to the
/// middle of the heel. The pads follow the toe as it is drawn.
SoleFlexion flexion_of(const Sole &sole, FlexionRig rig, double level);
} // namespace solemech::solver
