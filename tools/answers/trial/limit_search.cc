// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/limit_search.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// Where the chord between a margin above and one not above zero crosses it.
double chord(double low, double low_margin, double high, double high_margin)
{
  return low + (high - low) * low_margin / (low_margin - high_margin);
}
std::vector<double> distinct(double lower, double upper)
{
  return lower < upper ? std::vector{lower, upper} : std::vector{lower};
}

constexpr std::size_t patient_evaluations = 8;
} // namespace

LimitSearch::LimitSearch(double start, double lowest, double highest, double tolerance)
  : start_(std::clamp(start, lowest, highest)), lowest_(lowest), highest_(highest), tolerance_(tolerance)
{
}

void LimitSearch::take(double load, std::optional<double> margin)
{
  known_[load] = margin;
}

LimitSearch::Bracket LimitSearch::bracket() const
{
  Bracket result;
  for (const auto &[load, margin] : known_)
    if (margin && *margin > 0)
      result.low = {load, *margin};
    else
    {
      // Margins beyond the first load without one do not matter: the stack has locked up before.
      result.high = {load, margin};
      break;
    }
  return result;
}

bool LimitSearch::is_done(const Bracket &at) const
{
  if (at.low && at.high)
    return at.high->first - at.low->first <= tolerance_ * at.high->first;
  return (at.low && at.low->first >= highest_) || (at.high && at.high->first <= lowest_);
}

std::vector<double> LimitSearch::next() const
{
  const Bracket at = bracket();
  if (is_done(at))
    return {};
  if (!at.low && !at.high)
    return {start_};
  if (!at.high)
    return distinct(std::min(1.6 * at.low->first, highest_), std::min(2.6 * at.low->first, highest_));
  if (!at.low)
    return distinct(std::max(0.35 * at.high->first, lowest_), std::max(0.6 * at.high->first, lowest_));
  const auto [low, low_margin] = *at.low;
  const auto [high, high_margin] = *at.high;
  const double width = high - low;
  if (!high_margin)
    return {low + width / 3, low + 2 * width / 3};
  const double guess = chord(low, low_margin, high, *high_margin);
  const double half = 0.45 * tolerance_ * guess;
  const double edge = 0.02 * width;
  auto         loads = distinct(std::clamp(guess - half, low + edge, high - edge),
                                std::clamp(guess + half, low + edge, high - edge));
  if (known_.size() > patient_evaluations) // a margin with a kink: halving always gets there
    loads.push_back(low + width / 2);
  return loads;
}

LimitSearch::Answer LimitSearch::answer() const
{
  const Bracket at = bracket();
  if (at.low && at.high)
    return at.high->second
             ? Answer{Outcome::found, chord(at.low->first, at.low->second, at.high->first, *at.high->second)}
             : Answer{Outcome::stopped, at.low->first};
  if (at.low)
    return {at.low->first >= highest_ ? Outcome::above : Outcome::stopped, at.low->first};
  if (at.high)
    return {at.high->second ? Outcome::below : Outcome::stopped, at.high->first};
  return {Outcome::stopped, 0};
}
} // namespace solemech::tools
