// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/lesson_text.h"

#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools::learn
{
namespace
{
constexpr int widest = 100; ///< longer lines are hard to read

std::string paragraph(const std::string &text, int width, const std::string &indent = "")
{
  return wrapped(text, static_cast<std::size_t>(std::min(width, widest)), indent) + "\n";
}
} // namespace

std::string question_text(const CaseFile &file, int width)
{
  std::string text =
    paragraph(fmt::format("Lesson: {}", file.title), width) + "\n" + paragraph(file.question, width) + "\n";
  for (std::size_t i = 0; i < file.lesson->choices.size(); ++i)
    text += "  " + paragraph(fmt::format("{}  {}", i + 1, file.lesson->choices[i].text), width - 2, "     ");
  return text;
}

std::string answer_text(const LessonAnswer &answer, int width)
{
  std::string text = "The answer\n\n" + paragraph(answer.verdict, width) + paragraph(answer.because, width);
  for (const auto &each : answer.explanation)
    text += "\n" + paragraph(each, width);
  text += "\nHow it was decided\n\n";
  for (const auto &number : answer.decided_by)
    text += "  " + paragraph(fmt::format("{}: {}", number.words, number.value), width - 2, "    ");
  return text + "  " + paragraph(answer.rule, width - 2, "    ") + "  " +
         paragraph("Outside of this program: " + answer.source, width - 2, "    ");
}
} // namespace solemech::tools::learn
