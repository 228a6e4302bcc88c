// SPDX-License-Identifier: Apache-2.0
// The mixtures between two cases, run at one level of mesh and step, and shares from their readings.
#pragma once

#include "tools/answers/compare/mixtures.h"
#include "tools/study/job.h"

#include <functional>
#include <string>
#include <unordered_map>
#include <vector>

namespace solemech::tools
{
/// What shares are taken from.
enum class Split {
  all_orders,    ///< every mixture: few changes
  near_ends,     ///< mixtures of at most two changes, and of all but at most two
  sampled_orders ///< many changes, or some and a mixture that cannot be built
};

/// Every set that is needed, its number in the lists of runs, and why it cannot be built.
struct Sets
{
  Split                                      split = Split::all_orders;
  std::vector<std::vector<std::size_t>>      orders; ///< the sampled ones
  std::vector<ChangeSet>                     sets;
  std::vector<Mixture>                       mixtures;
  std::unordered_map<ChangeSet, std::size_t> number;
};

/// Those that the split of so many changes takes.
Sets needed_sets(const ChangePlan &plan);

/// Every set.
Sets all_sets(const ChangePlan &plan);

/// Some of the mixtures between two cases.
struct WantedMixtures
{
  const Sets                    &sets;
  std::function<bool(ChangeSet)> is_wanted;
};

/// Runs mixtures of several pairs of cases side by side.
/// @return [pair][set] results; incomplete where none was wanted or none can be built
/// @throws Interrupted
std::vector<std::vector<solver::Result>> run_mixtures(const std::vector<WantedMixtures> &pairs,
                                                      const SolveWish &wish, Job &job,
                                                      const std::string &what);

/// The same of one pair.
std::vector<solver::Result> run_mixtures(const Sets &sets, const SolveWish &wish, Job &job,
                                         const std::string                    &what,
                                         const std::function<bool(ChangeSet)> &is_wanted);

/// Value of a reading, no_value when the run has none.
double value_of(const solver::Result &result, const std::string &reading);

/// Shares of one reading at one level of mesh and step, and how far each may be off for mixtures that were
/// not run.
struct Shares
{
  std::vector<double> values, errors;
};

/// @param values  one a set, in the order of the sets
Shares shares_of(const Sets &sets, std::size_t n_changes, const std::vector<double> &values);

/// A place for each of the 2^n sets of changes, by its number; no_value where it was not run. Not for sampled
/// orders.
std::vector<double> by_set(const Sets &sets, std::size_t n_changes, const std::vector<double> &values);
} // namespace solemech::tools
