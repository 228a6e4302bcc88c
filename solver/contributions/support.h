// SPDX-License-Identifier: Apache-2.0
// What carries a movable support: a spring and a damper to the ground.
#pragma once

#include "solver/contribution.h"
#include "solver/rig_parts.h"

namespace solemech::solver
{
class Support : public Contribution
{
public:
  /// @param stiffness [N/m], @param damping [N s/m]
  Support(int unknown, double stiffness, double damping)
    : unknown_(unknown), stiffness_(stiffness), damping_(damping)
  {
  }

  void begin_step(const Vector &x, double dt) override { height_ = x[unknown_], dt_ = dt; }
  bool add(const Vector &x, Vector &force, Tangent *tangent) const override
  {
    const double damper = dt_ > 0 ? damping_ / dt_ : 0.0;
    force[unknown_] += stiffness_ * x[unknown_] + damper * (x[unknown_] - height_);
    if (tangent)
    {
      const auto body = unknown_ - tangent->coupling.rows();
      tangent->bodies(body, body) += stiffness_ + damper;
    }
    return true;
  }
  void accept(const Vector &x, double dt) override
  {
    const double way = x[unknown_] - height_;
    if (dt > 0)
      lost_ += damping_ * way * way / dt;
    stored_ = 0.5 * stiffness_ * x[unknown_] * x[unknown_];
  }
  void energies(std::vector<EnergyEntry> &entries) const override
  {
    entries.push_back({rig_part::support, "spring", EnergyKind::stored, stored_});
    entries.push_back({rig_part::support, "damper", EnergyKind::dissipated, lost_});
  }
  std::string name() const override { return rig_part::support; }

private:
  int    unknown_;
  double stiffness_, damping_;
  double height_ = 0, dt_ = 0, stored_ = 0, lost_ = 0;
};
} // namespace solemech::solver
