// SPDX-License-Identifier: Apache-2.0
// Grip of a sole at headings all round, from slides of its bars (slide.h): one slide for each rubber,
// pressure and heading relative to the bar. By symmetry a bar slid at a, -a, 180 - a or 180 + a degrees grips
// alike, and a herringbone grips as the mean of its two arms. The grip of the sole is that of its zones,
// weighed by their load.
#pragma once

#include "solver/rigs/slide.h"

namespace solemech::solver
{
/// Angle between a slide and the direction across a bar, brought to 0..pi/2 by the symmetry of the bar [rad].
double angle_to_bar(double heading, double across_bar);

/// The map at a given resolution; slides run on all processors. Curves: one value a heading, and what touches
/// under a tilted foot. Throws as run_slide.
Result run_tread(const Case &input, const SlideRig &rig, const Resolution &resolution,
                 const RunOptions &options);
} // namespace solemech::solver
