// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/saturation.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace solemech::records
{
std::optional<std::pair<std::size_t, std::size_t>> saturated_top(std::span<const double> values)
{
  if (values.empty())
    return std::nullopt;
  const auto   top = std::max_element(values.begin(), values.end());
  const double greatest = *top, least = *std::min_element(values.begin(), values.end());
  const double span = greatest - least, equal = 1e-9 * span;
  // Longest run at the top; noise on an unsaturated flank does not repeat the greatest value.
  std::size_t first = 0, last = 0, longest = 0;
  for (std::size_t i = 0, begin = 0; i < values.size(); ++i)
  {
    if (values[i] < greatest - equal)
      begin = i + 1;
    else if (i + 1 - begin > longest)
    {
      longest = i + 1 - begin;
      first = begin;
      last = i;
    }
  }
  if (longest < 3)
    return std::nullopt;
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  double step = span; // of the converter: the least difference of two values
  for (std::size_t i = 1; i < sorted.size(); ++i)
    if (const double change = sorted[i] - sorted[i - 1]; change > equal)
      step = std::min(step, change);
  const std::size_t half = std::max<std::size_t>(1, (last - first) / 2);
  const double      before = first >= half ? greatest - values[first - half] : span;
  const double      after = last + half < values.size() ? greatest - values[last + half] : span;
  if (std::min(before, after) > 6 * step)
    return std::pair(first, last);
  return std::nullopt;
}
} // namespace solemech::records
