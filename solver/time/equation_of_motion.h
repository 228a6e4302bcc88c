// SPDX-License-Identifier: Apache-2.0
// Sum of all contributions and the masses: the only thing the time integrator knows. It asks a mesh for the
// numbers of its unknowns alone, so a section and a solid are the same to it.
#pragma once

#include "solver/contribution.h"
#include "solver/rigid_body.h"
#include "solver/time/boundary_values.h"

namespace solemech::solver
{
struct EquationOfMotion
{
  const Numbering       *numbering = nullptr; ///< of the mesh
  Contributions          contributions;
  std::vector<double>    mass; ///< values of the consistent mass matrix on the pattern, one spare place [kg]
  std::vector<RigidBody> bodies;
  Vector                 rigid_inertia; ///< of all freedoms of the bodies [kg, kg m2]

  BoundaryValues boundary; ///< unknowns that are led

  int n_unknowns() const { return numbering->n_unknowns(); }
  int n_freedoms() const { return static_cast<int>(rigid_inertia.size()); }
  int size() const { return n_unknowns() + n_freedoms(); }

  /// Takes a rigid body in; its unknowns come after all others. Throws std::invalid_argument when its
  /// freedoms are none of a body.
  /// @return the body with its place among the unknowns, for what acts on it
  RigidBody add(RigidBody body);

  /// Takes a contribution in. @return it, for who asks it something later
  template <typename Part, typename... Arguments>
  Part &contribute(Arguments &&...arguments)
  {
    auto  owned = std::make_unique<Part>(std::forward<Arguments>(arguments)...);
    auto &part = *owned;
    contributions.push_back(std::move(owned));
    return part;
  }

  bool has_potential() const; ///< all that contributes has one
  void begin_step(const Vector &x, double dt);
  /// @return false, and the culprit in `failed`, when a contribution finds the state inadmissible
  bool forces(const Vector &x, Vector &force, Tangent *tangent, std::string &failed) const;
  void accept(const Vector &x, double dt);

  /// M a, bodies included.
  Vector inertia(const Vector &acceleration) const;
  /// Adds `factor` M to a tangent.
  void add_mass(double factor, Tangent &tangent) const;
  /// Adds the mass matrix, scaled to `share` of the tangent itself (median of the ratios on the diagonal).
  void stiffen(double share, Tangent &tangent) const;

  std::vector<EnergyEntry> energies() const;
};
} // namespace solemech::solver
