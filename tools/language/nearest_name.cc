// SPDX-License-Identifier: Apache-2.0
#include "tools/language/nearest_name.h"

#include <algorithm>
#include <cctype>

namespace solemech::materials
{
namespace
{
std::vector<std::string_view> words_of(std::string_view name)
{
  std::vector<std::string_view> words;
  for (std::size_t begin = 0; begin <= name.size();)
  {
    const auto end = std::min(name.find_first_of("-_ ", begin), name.size());
    words.push_back(name.substr(begin, end - begin));
    begin = end + 1;
  }
  return words;
}

/// A distance from which on a word of this length is another one.
double too_far(std::size_t length)
{
  return length <= 3 ? 1.01 : 0.34 * static_cast<double>(length) + 0.7;
}
} // namespace

std::string nearest_name(std::string_view name, const std::vector<std::string> &names)
{
  // Edit distance with adjacent swaps (Damerau 1964, optimal string alignment); a change of case counts half.
  const auto distance = [](std::string_view a, std::string_view b) {
    const auto cost = [](char x, char y) {
      if (x == y)
        return 0.;
      return std::tolower(static_cast<unsigned char>(x)) == std::tolower(static_cast<unsigned char>(y)) ? 0.5
                                                                                                        : 1.;
    };
    std::vector<std::vector<double>> d(a.size() + 1, std::vector<double>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
      for (std::size_t j = 0; j <= b.size(); ++j)
      {
        if (i == 0 || j == 0)
        {
          d[i][j] = static_cast<double>(i + j);
          continue;
        }
        d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + cost(a[i - 1], b[j - 1])});
        if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
          d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
      }
    return d[a.size()][b.size()];
  };
  if (name.empty() || name.size() > 80)
    return {};
  const auto words = words_of(name);
  const auto is_other_word = [&](const std::string &candidate) {
    const auto meant = words_of(candidate);
    if (words.size() < 2 || meant.size() != words.size())
      return false;
    for (std::size_t i = 0; i < words.size(); ++i)
      if (!(distance(words[i], meant[i]) < too_far(words[i].size())))
        return true;
    return false;
  };
  std::string best;
  double      best_distance = too_far(name.size());
  for (const auto &candidate : names)
  {
    const double here = distance(name, candidate);
    if (here < best_distance && !is_other_word(candidate))
    {
      best = candidate;
      best_distance = here;
    }
  }
  return best;
}
} // namespace solemech::materials
