// SPDX-License-Identifier: Apache-2.0
// Weight of a rigid body: m g on the height of its centre of mass, which a body that turns about another
// point swings up and down.
#pragma once

#include "solver/contribution.h"
#include "solver/rigid_body.h"

namespace solemech::solver
{
class RigidWeight : public Contribution
{
public:
  /// @param weight  m g [N]
  /// @param centre  of mass, when all freedoms of the body are zero [m]
  RigidWeight(std::string part, RigidBody body, double weight, const Place &centre = {})
    : part_(std::move(part)), body_(std::move(body)), weight_(weight), centre_{centre.x, centre.y, centre.z}
  {
  }

  bool add(const Vector &x, Vector &force, Tangent *tangent) const override
  {
    const auto motion = body_.motion(x);
    const auto now = motion.position(centre_);
    for (std::size_t k = 0; k < body_.freedoms.size(); ++k)
    {
      force[body_.unknown(k)] += weight_ * motion.rate(k, now)[upwards];
      if (!tangent || !is_turn(body_.freedoms[k]))
        continue;
      const auto bodies = tangent->coupling.rows();
      for (std::size_t l = k; l < body_.freedoms.size(); ++l)
      {
        const double entry = weight_ * motion.spin(k, motion.rate(l, now))[upwards];
        tangent->bodies(body_.unknown(k) - bodies, body_.unknown(l) - bodies) += entry;
        if (l != k)
          tangent->bodies(body_.unknown(l) - bodies, body_.unknown(k) - bodies) += entry;
      }
    }
    return true;
  }
  void accept(const Vector &x, double) override
  {
    rise_ = body_.motion(x).position(centre_)[upwards] - centre_[upwards];
  }
  void energies(std::vector<EnergyEntry> &entries) const override
  {
    entries.push_back({part_, "height", EnergyKind::exchanged, weight_ * rise_});
  }
  std::string name() const override { return part_; }

private:
  static constexpr unsigned upwards = 2; ///< z, the last of a place in space

  std::string           part_;
  RigidBody             body_;
  double                weight_;
  std::array<double, 3> centre_;
  double                rise_ = 0; ///< of the centre of mass over where it is at zero freedoms [m]
};
} // namespace solemech::solver
