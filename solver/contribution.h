// SPDX-License-Identifier: Apache-2.0
// Everything that stores or moves energy is a contribution; the equation of motion and the ledger sum the
// same list, so nothing can be forgotten. Forces are derivatives of an energy with respect to the unknowns.
// Unknowns x: displacements of the mesh first, then the freedoms of rigid bodies (rigid_body.h).
#pragma once

#include "solver/mesh/numbering.h"
#include "solver/results/result.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::solver
{
/// c g g^T, never formed: gas of a sealed chamber couples all wetted nodes.
struct RankOne
{
  Vector g; ///< on the displacements
  double c = 0;
};

/// Derivative of the forces.
struct Tangent
{
  std::vector<double>  values;   ///< lower triangle of the pattern, plus one place that nobody reads
  Eigen::MatrixXd      coupling; ///< displacements x freedoms of rigid bodies
  Eigen::MatrixXd      bodies;   ///< freedoms x freedoms of rigid bodies
  std::vector<RankOne> rank_one;
  std::vector<Eigen::Triplet<double>>
    unsymmetric; ///< further entries of the whole matrix, bodies behind displacements

  void reset(std::size_t n_values, int n_unknowns, int n_freedoms)
  {
    values.assign(n_values + 1, 0.0);
    coupling.setZero(n_unknowns, n_freedoms);
    bodies.setZero(n_freedoms, n_freedoms);
    rank_one.clear();
    unsymmetric.clear();
  }
};

/// One energy of a contribution since the ledger was opened [J].
struct EnergyEntry
{
  std::string_view part, kind;
  EnergyKind       type;
  double           value;
};

class Contribution
{
public:
  virtual ~Contribution() = default;

  /// Prepares a step of `dt` [s] from the accepted unknowns, and takes back what a failed one has settled.
  virtual void begin_step(const Vector & /*x*/, double /*dt*/) {}

  /// Adds its force at trial unknowns and, where wanted, its tangent.
  /// @return false when the trial state is inadmissible
  virtual bool add(const Vector &x, Vector &force, Tangent *tangent) const = 0;

  /// Renews what was held fixed during the iterations (pressure for friction) at their solution; it counts
  /// for the step that accept takes, and no other.
  /// @return relative change; a step whose changes do not become small fails
  virtual double settle(const Vector & /*x*/) { return 0; }

  /// Takes the step that begin_step prepared.
  virtual void accept(const Vector & /*x*/, double /*dt*/) {}

  virtual void energies(std::vector<EnergyEntry> & /*entries*/) const {}

  /// Where the trial state failed, for messages.
  virtual std::string name() const = 0;

  /// Whether its force is the gradient of an incremental potential, so that its tangent is symmetric.
  virtual bool has_potential() const { return true; }
};

using Contributions = std::vector<std::unique_ptr<Contribution>>;
} // namespace solemech::solver
