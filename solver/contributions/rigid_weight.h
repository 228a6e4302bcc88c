// SPDX-License-Identifier: Apache-2.0
// Weight of a rigid body that moves up and down: m g on its height.
#pragma once

#include "solver/contribution.h"

namespace solemech::solver
{
class RigidWeight : public Contribution
{
public:
  RigidWeight(std::string part, int unknown, double weight)
    : part_(std::move(part)), unknown_(unknown), weight_(weight)
  {
  }

  bool add(const Vector &, Vector &force, Tangent *) const override
  {
    force[unknown_] += weight_;
    return true;
  }
  void accept(const Vector &x, double) override { height_ = x[unknown_]; }
  void energies(std::vector<EnergyEntry> &entries) const override
  {
    entries.push_back({part_, "height", EnergyKind::exchanged, weight_ * height_});
  }
  std::string name() const override { return part_; }

private:
  std::string part_;
  int         unknown_;
  double      weight_;     ///< m g [N]
  double      height_ = 0; ///< over the level at first touch [m]
};
} // namespace solemech::solver
