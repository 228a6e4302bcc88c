// SPDX-License-Identifier: Apache-2.0
// A tester's own yardstick: categories that turn readings into points. Nothing is preset.
//
//   title = "my scale"
//   [[category]]
//   name    = "springy"
//   reading = "rebound"                        # name of a reading in the sheets, or of a computed one
//   weight  = 2                                # of the category in the total, 1 unless written
//   anchors = [["200 mm", 1], ["320 mm", 10]]  # a value and its points, straight lines between; more or less
//   is better
//
// Points beyond the first and last anchor stay at theirs. The total is the weighted mean of the categories
// that have a reading; those without are named.
#pragma once

#include "tools/answers/book/book_entries.h"
#include "tools/language/problem.h"
#include "tools/language/quantity.h"

#include <utility>

namespace solemech::book
{
struct Category
{
  std::string          name, reading;
  double               weight = 1;
  materials::Dimension dimension = materials::Dimension::number;
  std::string          scale; ///< of a hardness
  std::vector<std::pair<double, double>>
    anchors; ///< value [SI, or points of the scale] and points, values rising
};

struct Yardstick
{
  std::string           title;
  std::vector<Category> categories;
};

/// Everything that is wrong goes to `problems` with its place.
Yardstick read_yardstick(const std::string &text, const std::string &file, materials::Problems &problems);

struct Points
{
  std::string category;
  bool        known = false;
  double      points = 0;
  std::string reason; ///< one sentence, also why there are none
};

struct Judged
{
  std::vector<Points>   categories;
  std::optional<double> total;
};

/// Measured readings come first (the mean of repeated values); without one, that of the newest result, and it
/// says so.
Judged judge(const Yardstick &yardstick, const Sheet &sheet);
} // namespace solemech::book
