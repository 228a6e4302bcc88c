// SPDX-License-Identifier: Apache-2.0
// Numbers of a lesson from finished runs, and how people read them.
#pragma once

#include "tools/language/lesson.h"
#include "tools/output/results/run_record.h"

#include <string>
#include <vector>

namespace solemech::tools::learn
{
/// Value of a measure in SI (shares, ratios and changes as pure numbers).
/// @throws solver::ResultsError when a run stopped early, lacks the reading, or the number is not finite
double measured(const ReadingMeasure &measure, const std::vector<Run> &runs);

/// The value for people: "1.15 kN", "65.4 %", "1.6 points" for a difference of shares, "1.71" for a ratio.
/// Without sign the size alone.
std::string measured_text(const ReadingMeasure &measure, double value, bool with_sign = false);

/// The measure in words: "peak force of thin over that of thick".
std::string spoken(const ReadingMeasure &measure);

/// The text with its numbers filled in.
/// @throws solver::ResultsError as measured()
std::string filled(const LessonText &text, const std::vector<Run> &runs);
} // namespace solemech::tools::learn
