// SPDX-License-Identifier: Apache-2.0
// Spring of a hardness gauge on its tip: base + slope H downwards, H = 100 (1 - depth/travel); it weakens as
// the tip goes in. The tip's height is minus the depth.
#pragma once

#include "materials/gauge.h"
#include "solver/contribution.h"
#include "solver/rig_parts.h"

namespace solemech::solver
{
class GaugeSpring : public Contribution
{
public:
  GaugeSpring(const materials::Gauge &gauge, int unknown) : gauge_(gauge), unknown_(unknown) {}

  bool add(const Vector &x, Vector &force, Tangent *tangent) const override
  {
    force[unknown_] += gauge_.force(gauge_.reading_at(-x[unknown_]));
    if (tangent)
    {
      const auto body = unknown_ - tangent->coupling.rows();
      tangent->bodies(body, body) += stiffness();
    }
    return true;
  }
  void accept(const Vector &x, double) override { height_ = x[unknown_]; }
  void energies(std::vector<EnergyEntry> &entries) const override
  {
    // What it has given so far is the mean of its forces over the way.
    const double given = -height_ * (gauge_.force(100) + 0.5 * stiffness() * height_);
    entries.push_back({rig_part::gauge, "spring", EnergyKind::exchanged, -given});
  }
  std::string name() const override { return rig_part::gauge; }

private:
  materials::Gauge gauge_;
  int              unknown_;
  double           height_ = 0;

  double stiffness() const { return 100 * gauge_.force_slope / gauge_.travel; } ///< [N/m]
};
} // namespace solemech::solver
