// SPDX-License-Identifier: Apache-2.0
// Life of a lug on a court: slides of its face as it wears down (wear_process.h), each a slide of its own
// with the force of the fresh lug. Depth follows Archard's law with the coefficient of this rubber on this
// court.
#pragma once

#include "solver/resolution.h"
#include "solver/run.h"

namespace solemech::solver
{
/// The rig must carry `wear`. Curves run over the way of slip. A lug that folds over or finds no balance on
/// the way is a result with a warning. Throws RunFailed when the fresh lug cannot be slid, RunStopped,
/// InvalidGeometry.
Result run_wear(const Case &input, const SlideRig &rig, const Resolution &resolution,
                const RunOptions &options);
} // namespace solemech::solver
