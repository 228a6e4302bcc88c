// SPDX-License-Identifier: Apache-2.0
// The energy account of a run is a gate: what it leaves open, over the energy that the run is about, may not
// exceed half a per cent. When it does, the run is repeated with every contribution's work held against its
// own energies, so that the refusal can say where the account is open.
#pragma once

#include "solver/time/equation_of_motion.h"

#include <map>
#include <string>

namespace solemech::solver
{
/// Share of the energy that a run is about which its account may leave open [-].
inline constexpr double most_open = 0.005;

/// What each part leaves open so far [J].
using OpenParts = std::map<std::string, double>;

/// What the account of a result leaves open [-].
inline double open_share(const Result &result)
{
  return result.facts.ledger_numerical + result.facts.ledger_residual;
}

/// Sets the facts about the energy account from the last ledger values: numerical and residual energy over
/// `scale` [J], the energy that the run is about.
void set_ledger_facts(Result &result, double scale);

/// How far the account of a result is open, in which part most, and what to try.
std::string open_account_text(const Result &result, const OpenParts &parts);

/// Books the work of each contribution's own force against the change of its own energies, step by step.
class PartAccounts
{
public:
  explicit PartAccounts(const EquationOfMotion &equation) : equation_(equation) {}

  /// Takes forces and energies as they are at x; before the state there is accepted.
  void start(const Vector &x);

  /// Work of the step from the accepted state to x, before it is accepted.
  /// @param old_share  of the force at the beginning in the mixed one [-]
  void work(const Vector &x, const Vector &dx, double old_share);

  /// Books the step against the energies, after it was accepted.
  void close(OpenParts &open);

private:
  const EquationOfMotion &equation_;
  std::vector<Vector>     forces_;
  std::vector<double>     energies_, works_;

  std::vector<Vector> forces(const Vector &x) const;
  std::vector<double> energies() const;
};
} // namespace solemech::solver
