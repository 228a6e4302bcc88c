// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/bands.h"

#include "solver/results/catalogue.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
double least_share_error(const std::string &name, double scale)
{
  const auto *kind = solver::find_reading(name);
  const auto  words = kind ? kind->compared : solver::Compared{};
  return words.least_share_error * (words.share_error_in_points ? 1 : std::abs(scale));
}

Banded banded(double fine, double coarse, double least)
{
  return {fine, std::max(std::abs(fine - coarse), least)};
}
} // namespace solemech::tools
