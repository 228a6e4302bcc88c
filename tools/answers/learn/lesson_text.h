// SPDX-License-Identifier: Apache-2.0
// A lesson as plain text for the terminal and summary.txt.
#pragma once

#include "tools/answers/learn/answer.h"

#include <string>

namespace solemech::tools::learn
{
/// The question and its numbered choices.
std::string question_text(const CaseFile &file, int width);

/// Verdict, reason, explanation, the numbers that decided, source.
std::string answer_text(const LessonAnswer &answer, int width);
} // namespace solemech::tools::learn
