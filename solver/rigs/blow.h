// SPDX-License-Identifier: Apache-2.0
// One blow of a drop weight, from first touch to contact loss: steps by error control, shorter where the
// energy account or the search for the loss asks for it; stops with a reason when a step cannot be taken or
// free faces go through each other.
#pragma once

#include "solver/results/recorder.h"
#include "solver/run.h"

#include <string>
#include <vector>

namespace solemech::solver
{
inline constexpr double pictures_a_blow = 70; // no more than it takes steps

/// State of the weight when the force has come down to zero, interpolated.
struct ContactLoss
{
  double time = 0, speed = 0, height = 0; ///< [s], upwards [m/s], over the touch level [m]
};

/// One blow: from first touch to contact loss.
class Blow
{
public:
  /// The references have to outlive it.
  Blow(const StackModel &model, const DropRig &rig, TimeIntegrator &integrator, Recorder &recorder,
       const Resolution &resolution, const RunOptions &options)
    : model_(model), rig_(rig), integrator_(integrator), recorder_(recorder), resolution_(resolution),
      options_(options)
  {
    settings.newton.tolerance *= resolution.newton_tolerance;
  }

  /// From the drop weight at `touch_level` [m, fresh stack: 0] falling at `touch_speed` [m/s].
  void run(double touch_level, double touch_speed, double share_before, double share_of_run);

  ContactLoss         loss;
  StepSettings        settings; ///< of its last step
  double              greatest_way = 0, time_of_peak = 0, start_time = 0;
  std::vector<double> axis_thickness_at_peak;

private:
  const StackModel &model_;
  const DropRig    &rig_;
  TimeIntegrator   &integrator_;
  Recorder         &recorder_;
  const Resolution &resolution_;
  const RunOptions &options_;

  /// The crest of the way in the step from `before` to now, when there is one and none was higher.
  void look_for_crest(const Vector &x_before, const Vector &v_before, double dt);

  [[noreturn]] void fail(const std::string &reason, double t,
                         const std::string &cure = "Try less drop energy, or a thicker or firmer stack");
};
} // namespace solemech::solver
