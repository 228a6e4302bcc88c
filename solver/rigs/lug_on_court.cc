// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/lug_on_court.h"

#include "solver/rigs/slide.h"
#include "solver/rigs/tread.h"
#include "solver/rigs/wear.h"
#include "solver/run.h"

namespace solemech::solver
{
Result run_rig(const Case &input, const SlideRig &rig, const Resolution &resolution,
               const RunOptions &options)
{
  const auto run = rig.wear ? run_wear : rig.tread ? run_tread : run_slide;
  return run(input, rig, resolution, options);
}
} // namespace solemech::solver
