// SPDX-License-Identifier: Apache-2.0
// The [lesson] block of a case file: choices, the rule that finds the right one from the numbers of the
// runs, and texts with places for numbers. Nothing here knows which choice is right.
// The rule has one of two forms. With `measure` one number is compared with the `below` limits of the
// choices, which follow each other upwards and leave no gap. Without it every choice has a measure of its own
// and the greatest (or least) size wins; when the two foremost lie closer than `close`, it is the choice
// without a measure. Either way exactly one choice is right, whatever the numbers.
#pragma once

#include "tools/language/problem.h"
#include "tools/language/reading_measure.h"

#include <toml++/toml.h>

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// A text with places for numbers: text.front(), number, text, number, ..., text.back().
struct LessonText
{
  struct Number
  {
    ReadingMeasure measure;
    bool           with_sign = false; ///< written {+...}; else the size alone
  };
  std::vector<std::string> texts; ///< one more than numbers
  std::vector<Number>      numbers;
};

struct LessonChoice
{
  std::string                   text;
  LessonText                    because; ///< said when this is the right choice
  double                        below = std::numeric_limits<double>::infinity(); ///< SI
  std::optional<ReadingMeasure> measure;
};

struct Lesson
{
  enum class Rule { limits, greatest, least };

  int                           number = 0; ///< place in the list of lessons
  Rule                          rule = Rule::limits;
  std::optional<ReadingMeasure> measure;   ///< of the limits
  double                        close = 0; ///< share of the foremost size
  std::vector<LessonChoice>     choices;
  std::vector<LessonText>       explanation;
  std::vector<std::string>      readings; ///< columns of the table to fill in
  std::string                   source;   ///< where the finding stands outside of the program
};

/// Reads the block. `text` is that of the file, for the places of numbers inside of texts. Slips go to
/// `problems`; the lesson is then not to be used.
Lesson read_lesson(const toml::table &block, const std::vector<NamedRun> &runs, const std::string &text,
                   materials::Problems &problems);
} // namespace solemech::tools
