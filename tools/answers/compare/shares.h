// SPDX-License-Identifier: Apache-2.0
// Who makes how much of a difference, when several changes lead from A to B? Each change is given what it
// adds when it is made after those before it, averaged over every order of the changes (L. S. Shapley, A
// value for n-person games, 1953): the shares add up to the difference, a change that does nothing gets
// nothing, two that act alike get the same. What two changes do together beyond each alone is the interaction
// index of M. Grabisch and M. Roubens, An axiomatic approach to the concept of interaction among players in
// cooperative games, Int. J. Game Theory 28 (1999) 547. Pure functions of a table of values; a set of changes
// is a number with one bit a change.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace solemech::tools
{
using ChangeSet = std::uint32_t; ///< bit i: change i is made

/// Value of a set of changes that cannot be built or run.
inline constexpr double no_value = std::numeric_limits<double>::quiet_NaN();

constexpr std::size_t most_exact_changes = 7; ///< that are split over all mixtures
constexpr std::size_t least_near_ends = 5;    ///< up to here all mixtures are as few
constexpr std::size_t most_near_ends = 12;

/// Shares by every order. Orders that pass through a set without value are left out; the others count alike.
/// @param values  one for each of the 2^n sets, by their number; the first and the last one are finite
/// @return one share a change, or nothing when no order is left
std::optional<std::vector<double>> shares_over_all_orders(std::span<const double> values);

/// At most two changes are made, or at most two are not.
bool is_near_end(ChangeSet set, std::size_t n_changes);

struct SharesNearEnds
{
  std::vector<double>
         shares;     ///< one a change; empty when a mixture of one change or of all but one is missing
  double spread = 0; ///< what the shares lacked of the difference, spread evenly over them
};

/// Shares by mixtures near both ends. What a change adds to s others, averaged over them, is a polynomial in
/// s one degree lower than the number of changes that depend on each other at once, and the share is its mean
/// over s = 0 .. n - 1. That mean is taken from s = 0, 1, n - 2 and n - 1, exact up to the third degree: up
/// to four changes at once.
/// @param values  as above, more than four changes; those not near an end are not looked at
SharesNearEnds shares_near_ends(std::span<const double> values);

/// Share of the orders of n changes that pass through sets with a value only, 0..1.
double share_of_possible_orders(std::span<const double> values);

/// What changes i and j do together beyond what each does alone, weighted over all sets of the others; sets
/// where one of the four values is missing are left out and the rest weighted up. Nothing when none is left.
std::optional<double> interaction(std::span<const double> values, std::size_t i, std::size_t j);

/// Orders of n changes: drawn at random from a fixed seed, each followed by its reverse, which cancels much
/// of the scatter. An order lists the changes in the order in which they are made.
std::vector<std::vector<std::size_t>> sampled_orders(std::size_t n_changes, std::size_t n_pairs);

/// The sets that an order passes through, from none to all changes.
std::vector<ChangeSet> sets_of(const std::vector<std::size_t> &order);

/// Shares by sampled orders and their standard errors, from the scatter between pairs.
struct SampledShares
{
  std::vector<double> shares, standard_errors; ///< one a change
  std::size_t         n_orders = 0;            ///< that were possible
};

/// @param orders  as sampled_orders gives them; an order through a set without value is left out
/// @param value   of a set of changes, no_value when there is none
template <typename Value>
SampledShares shares_over_orders(const std::vector<std::vector<std::size_t>> &orders, const Value &value);

namespace detail
{
SampledShares averaged(const std::vector<std::vector<std::optional<double>>> &steps, std::size_t n_changes);
}

template <typename Value>
SampledShares shares_over_orders(const std::vector<std::vector<std::size_t>> &orders, const Value &value)
{
  std::size_t                                     n_changes = 0;
  std::vector<std::vector<std::optional<double>>> steps;
  for (const auto &order : orders)
  {
    n_changes = order.size();
    const auto                         sets = sets_of(order);
    std::vector<std::optional<double>> step(n_changes);
    for (std::size_t k = 0; k < n_changes; ++k)
      if (const double added = value(sets[k + 1]) - value(sets[k]); added == added)
        step[order[k]] = added;
    steps.push_back(std::move(step));
  }
  return detail::averaged(steps, n_changes);
}
} // namespace solemech::tools
