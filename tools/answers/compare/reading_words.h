// SPDX-License-Identifier: Apache-2.0
// How the readings of a comparison are called and printed, and which difference of each may be read as real:
// what the catalogue of readings says.
#pragma once

#include "solver/results/catalogue.h"

#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
struct ReadingWords
{
  std::string_view label;      ///< for people
  std::string_view unit;       ///< display unit of the reading, e.g. "%"
  std::string_view difference; ///< display unit of a difference, e.g. "points"
  double           scale;      ///< display value of one SI unit
  int              digits;     ///< decimals of a difference
  std::string_view more, less; ///< "higher", "lower"
};

/// Words of a reading; of one that is not compared, plain ones.
ReadingWords reading_words(std::string_view name);

/// Readings that two runs are compared by, in the order in which people read them.
const std::vector<const solver::ReadingKind *> &compared_readings();

/// Least difference of two such readings that is read as real [SI]; 0: none is known.
double real_difference(std::string_view name, double from, double to);

/// True when a difference of this size is too small to be taken as real unless the inputs are known that
/// well: 2 points of return, 3 % of peak force.
bool is_within_doubt(std::string_view name, double from, double to);
} // namespace solemech::tools
