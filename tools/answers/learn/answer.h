// SPDX-License-Identifier: Apache-2.0
// The answer of a lesson, found from its runs: which choice is right, whether a guess held, and why.
#pragma once

#include "tools/language/case_file.h"
#include "tools/output/results/run_record.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::learn
{
/// A number that decided, in words and as text.
struct DecidingNumber
{
  std::string words;    ///< "peak force of thin over that of thick"
  std::string value;    ///< "1.71"
  double      size = 0; ///< SI, with sign
};

struct LessonAnswer
{
  std::string                 title, question;
  std::vector<std::string>    choices;
  std::size_t                 right = 0;
  std::optional<std::size_t>  guess;
  std::string                 verdict; ///< one sentence: what is right, and whether the guess held
  std::string                 because;
  std::vector<std::string>    explanation;
  std::vector<DecidingNumber> decided_by;
  std::string                 rule;   ///< how the numbers decide, one sentence
  std::string                 source; ///< outside of the program
};

/// Number of the right choice. Exactly one is, for any finite numbers.
/// @throws solver::ResultsError when a run gives no number
std::size_t right_choice(const Lesson &lesson, const std::vector<Run> &runs);

/// The whole answer. `file.lesson` must be there and `runs` be those of the file, in order.
/// @throws solver::ResultsError when a run gives no number
LessonAnswer answer_lesson(const CaseFile &file, const std::vector<Run> &runs,
                           std::optional<std::size_t> guess);
} // namespace solemech::tools::learn
