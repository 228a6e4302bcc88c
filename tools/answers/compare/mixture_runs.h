// SPDX-License-Identifier: Apache-2.0
// The mixtures between two cases, run at one level of mesh and step, and shares from their readings.
#pragma once

#include "tools/answers/compare/explain.h"
#include "tools/answers/compare/mixtures.h"
#include "tools/study/forgiving.h"

#include <functional>
#include <string>
#include <unordered_map>
#include <vector>

namespace solemech::tools
{
/// Every set that is needed, its number in the lists of runs, and why it cannot be built.
struct Sets
{
  std::vector<std::vector<std::size_t>>      orders; ///< empty: all of them
  std::vector<ChangeSet>                     sets;
  std::vector<Mixture>                       mixtures;
  std::unordered_map<ChangeSet, std::size_t> number;
};

/// All sets when the changes are few, else those of sampled orders.
Sets needed_sets(const ChangePlan &plan);

/// Runs mixtures and counts the runs.
class MixtureRunner
{
public:
  MixtureRunner(const Sets &sets, const ExplainTools &tools, Explanation &answer)
    : sets_(sets), tools_(tools), answer_(answer)
  {
  }

  /// Runs what `is_wanted` says, as the share from..to of all the work.
  /// @return one result a set; incomplete where none was wanted or none can be built
  /// @throws what the solver throws, and solver::ResultsError of the store
  std::vector<solver::Result> run(const SolveWish &wish, double from, double to, const Solve &solve,
                                  const std::function<bool(ChangeSet)> &is_wanted) const;

private:
  const Sets         &sets_;
  const ExplainTools &tools_;
  Explanation        &answer_;
};

/// Value of a reading, no_value when the run has none.
double value_of(const solver::Result &result, const std::string &reading);

/// Shares of one reading at one level of mesh and step, with standard errors when orders are sampled.
struct Shares
{
  std::vector<double> values, sampling_errors;
};

/// @param values  one a set, in the order of the sets
Shares shares_of(const Sets &sets, std::size_t n_changes, const std::vector<double> &values);
} // namespace solemech::tools
