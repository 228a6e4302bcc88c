// SPDX-License-Identifier: Apache-2.0
// From two cases to what makes the difference between them: every mixture that is needed is run coarser, some
// at the wished accuracy, and each reading's difference is split into shares with bands.
#pragma once

#include "tools/answers/compare/mixture_runs.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// What two changes do together beyond what each does alone [unit of the reading].
struct Together
{
  std::size_t first = 0, second = 0; ///< numbers of the changes
  double      value = 0, band = 0;
};

/// A part of a difference with the band it is good to; SI.
struct Banded
{
  double value = 0, band = 0;

  /// The band does not reach zero: at least the sign is known.
  bool is_told() const { return value > band || value < -band; }
};

/// The difference of one reading and what each change makes of it.
struct ReadingSplit
{
  std::string         name; ///< of the reading, e.g. "rebound_by_height"
  std::string         unit; ///< SI
  double              from = 0, to = 0;
  Banded              total;
  std::vector<Banded> shares; ///< one a change; empty when no order of the changes is possible
  std::vector<Together>
    interactions; ///< above a fifth of one of the two shares and beyond their band; greatest first
};

/// True when a share is less than a difference that is read as real.
bool is_small_share(const ReadingSplit &split, std::size_t change);

/// The greatest interaction of a change that is more than a fifth of its share: no single cause is claimed
/// then.
const Together *entangled(const ReadingSplit &split, std::size_t change);

struct ImpossibleMixture
{
  std::string name, reason;
};

struct Explanation
{
  ChangePlan                     plan;
  solver::Result                 a, b; ///< the ends, with pictures and estimated errors
  std::vector<ReadingSplit>      splits;
  std::vector<ImpossibleMixture> impossible;
  std::optional<double>          possible_orders; ///< share of those that count, where every order is split
  std::size_t                    n_sampled_orders = 0; ///< 0: every order
  std::size_t                    n_calculated = 0, n_from_store = 0;
  std::string                    no_shares;          ///< why there are none; empty: there are
  bool                           has_doubts = false; ///< A or B has; the bands then hold them, unless:
  std::string                    no_doubt_bands;     ///< why they do not
  bool                           shares_without_doubts = false; ///< some doubt widens the difference alone
  std::string one_rod; ///< numbers of the rod that both were read on, made one; empty: none
};

/// A and B moved together.
struct CasePair
{
  solver::Case a, b;
};

/// Two cases that are about to be compared: what differs, and the mixtures that have to be run for it.
struct Comparison
{
  ChangePlan plan; ///< of the two, without doubts
  Sets       sets;
  bool       comparable = true; ///< they give readings of one kind
  /// Both at the upper end of each doubt about them. These are independent of each other; one that moves both
  /// cases drops out of their difference for the most part.
  std::vector<CasePair> moved = {};
  std::string           one_rod = {}; ///< as in Explanation
};

/// With the doubts that the two cases carry, on one rod where both settled theirs.
Comparison prepared(solver::Case a, solver::Case b);

/// With doubts that somebody else knows, such as those of two cases settled together.
Comparison prepared(solver::Case a, solver::Case b, std::vector<CasePair> moved);

/// Work of the runs of a comparison, as Job::expect takes it.
double cost_of(const Comparison &comparison);

/// Splits the differences of B against A. Of equal cases there is nothing to split and nothing is run twice.
/// When A or B does not come to its end, nothing is split either.
/// @param what  a few words on the pair, for the progress
/// @throws Interrupted
Explanation explained(const Comparison &comparison, Job &job, const std::string &what = "");

/// The reading that speaks for a run: rebound of a drop, set of a hold, loop return of a press. "" when there
/// is none.
std::string main_reading(const solver::Result &a, const solver::Result &b);
} // namespace solemech::tools
