// SPDX-License-Identifier: Apache-2.0
// How near each layer came to locking up.
#pragma once

#include "solver/model.h"
#include "solver/models/layer_thickness.h"
#include "solver/results/result.h"

namespace solemech::solver
{
/// The layers when a rigid body has gone down farthest. In a blow its crest lies within a step, where its
/// speed turns; without inertia steps are its crests.
class CrestWatch : public Observer
{
public:
  /// @param height  unknown of the body
  CrestWatch(LayerThickness layers, int height) : layers_(std::move(layers)), height_(height) {}

  std::optional<Objection> look(const AcceptedStep &step) override;

  double                     way() const { return way_; }   ///< downwards, at the crest [m]
  double                     time() const { return time_; } ///< of the crest, on the clock of the rig [s]
  const std::vector<double> &thickness() const { return thickness_; } ///< then, foot side first [m]

private:
  LayerThickness      layers_;
  int                 height_;
  Vector              last_x_, last_v_; ///< of the last step with a speed; none before the first
  double              last_time_ = 0, way_ = 0, time_ = 0;
  std::vector<double> thickness_;

  void look_within(const AcceptedStep &step);
};

/// Adds `bottoming_margin` (share of the useful travel left in the layer that has least; 0: locked up), one
/// `compression.<layer>` a layer, and warnings. Useful travel: locking.h.
/// @param at_rest, at_peak  thickness of each layer as the stack lies and at the peak [m]
void add_bottoming(const std::vector<Layer> &layers, const std::vector<double> &at_rest,
                   const std::vector<double> &at_peak, Result &result);
} // namespace solemech::solver
