// SPDX-License-Identifier: Apache-2.0
// One blow of a drop weight, from first touch to contact loss: steps by error control, shorter where the
// energy account or the search for the loss asks for it; stops with a reason when a step cannot be taken or
// free faces go through each other.
#pragma once

#include "solver/bottoming.h"
#include "solver/fold_watch.h"
#include "solver/results/stack_recorder.h"
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
  /// The references have to outlive it. Recorder and crest look at its steps.
  Blow(StackModel &model, const DropRig &rig, TimeIntegrator &integrator, Recorder &recorder,
       const Resolution &resolution, const RunOptions &options)
    : crest(model.layer_thickness, model.tup_unknown()), model_(model), rig_(rig), integrator_(integrator),
      recorder_(recorder), resolution_(resolution), options_(options), folds_(*model.folds)
  {
    settings.newton.tolerance *= resolution.newton_tolerance;
    model.observers = {&folds_, &recorder_, &crest};
  }
  ~Blow() { model_.observers.clear(); }
  Blow(const Blow &) = delete;

  /// From the drop weight at `touch_level` [m, fresh stack: 0] falling at `touch_speed` [m/s].
  void run(double touch_level, double touch_speed, double share_before, double share_of_run);

  ContactLoss  loss;
  StepSettings settings; ///< of its last step
  CrestWatch   crest;

private:
  StackModel       &model_;
  const DropRig    &rig_;
  TimeIntegrator   &integrator_;
  Recorder         &recorder_;
  const Resolution &resolution_;
  const RunOptions &options_;
  FoldWatch         folds_;
  double            start_time_ = 0;

  /// Shows the step that was accepted last.
  void              show(bool is_mark = false);
  [[noreturn]] void fail(const std::string &reason, double t,
                         const std::string &cure = "Try less drop energy, or a thicker or firmer stack");
};
} // namespace solemech::solver
