// SPDX-License-Identifier: Apache-2.0
// A given force on a rigid body, downwards positive; its work is booked as exchanged.
#pragma once

#include "solver/contribution.h"
#include "solver/rig_parts.h"

namespace solemech::solver
{
class AppliedForce : public Contribution
{
public:
  explicit AppliedForce(int unknown) : unknown_(unknown) {}

  double force = 0; ///< at the end of the next step, downwards [N]

  bool add(const Vector &, Vector &sum, Tangent *) const override
  {
    sum[unknown_] += force;
    return true;
  }
  void accept(const Vector &x, double dt) override
  {
    if (dt > 0)
      work_ += 0.5 * (force + last_force_) * (last_height_ - x[unknown_]);
    last_force_ = force, last_height_ = x[unknown_];
  }
  void energies(std::vector<EnergyEntry> &entries) const override
  {
    entries.push_back({rig_part::press, "work", EnergyKind::exchanged, -work_});
  }
  std::string name() const override { return rig_part::press; }

private:
  int    unknown_;
  double last_force_ = 0, last_height_ = 0, work_ = 0;
};
} // namespace solemech::solver
