// SPDX-License-Identifier: Apache-2.0
// A rigid body and those freedoms that it has; others are no unknowns. Each has an inertia of its own: a body
// that both moves and turns freely has its centre of mass for a reference, and one whose turns carry inertia
// turns about one axis, since the inertia of others would change with the attitude.
#pragma once

#include "solver/mesh/numbering.h"
#include "solver/rigid_motion.h"

#include <algorithm>
#include <stdexcept>

namespace solemech::solver
{
struct RigidBody
{
  std::vector<Freedom> freedoms;  ///< ways first, then turns, the outermost turn first
  std::vector<double>  inertia;   ///< of each [kg, kg m2]
  Place                reference; ///< what it turns about, at zero freedoms
  int                  first = 0; ///< unknown of its first freedom; the equation of motion sets it

  int n_freedoms() const { return static_cast<int>(freedoms.size()); }
  int unknown(std::size_t k) const { return first + static_cast<int>(k); }

  /// Where it is at the unknowns x of the whole equation.
  RigidMotion motion(const Vector &x) const
  {
    return {freedoms, freedoms.empty() ? nullptr : &x[first], reference};
  }

  /// Throws std::invalid_argument when the freedoms are none of a body.
  void check() const
  {
    int n_turning = 0;
    for (std::size_t k = 0; k < freedoms.size() && k < inertia.size(); ++k)
      n_turning += is_turn(freedoms[k]) && inertia[k] > 0;
    if (inertia.size() != freedoms.size() || freedoms.size() > 6 ||
        !std::is_partitioned(freedoms.begin(), freedoms.end(), [](Freedom f) { return !is_turn(f); }))
      throw std::invalid_argument("a rigid body has up to six freedoms, ways before turns, an inertia each");
    if (n_turning > 1)
      throw std::invalid_argument("a rigid body with inertia turns about one axis");
  }
};

/// A body that only moves up and down, like a drop weight [kg].
inline RigidBody lifted_body(double mass, int first = 0)
{
  return {{Freedom::along_z}, {mass}, {}, first};
}
} // namespace solemech::solver
