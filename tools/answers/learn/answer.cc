// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/answer.h"

#include "tools/answers/learn/measured.h"
#include "tools/language/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::learn
{
namespace
{
std::size_t by_limits(const Lesson &lesson, const std::vector<Run> &runs)
{
  const double value = measured(*lesson.measure, runs);
  std::size_t  choice = 0;
  while (choice + 1 < lesson.choices.size() && value >= lesson.choices[choice].below)
    ++choice;
  return choice;
}

/// The sign of a size does not matter: a fall by half is more than a rise by a third.
std::size_t by_size(const Lesson &lesson, const std::vector<Run> &runs)
{
  const double        sign = lesson.rule == Lesson::Rule::greatest ? 1 : -1;
  std::size_t         best = lesson.choices.size(), without = lesson.choices.size();
  std::vector<double> sizes(lesson.choices.size());
  for (std::size_t i = 0; i < lesson.choices.size(); ++i)
  {
    if (!lesson.choices[i].measure)
    {
      without = i;
      continue;
    }
    sizes[i] = std::abs(measured(*lesson.choices[i].measure, runs));
    if (best == lesson.choices.size() || sign * sizes[i] > sign * sizes[best])
      best = i;
  }
  for (std::size_t i = 0; i < sizes.size() && without < sizes.size(); ++i)
    if (i != best && i != without &&
        std::abs(sizes[i] - sizes[best]) < lesson.close * std::max(sizes[i], sizes[best]))
      return without;
  return best;
}

/// A limit as the reader of the case wrote it, in the words of the measure.
std::string limit_text(const Lesson &lesson, double limit)
{
  return measured_text(*lesson.measure, limit, limit < 0);
}

std::string rule_text(const Lesson &lesson)
{
  if (lesson.rule != Lesson::Rule::limits)
    return fmt::format(
      "The {} decides{}.",
      lesson.rule == Lesson::Rule::greatest ? "largest size, up or down," : "smallest value",
      lesson.close > 0 ? fmt::format("; sizes within {:g} % of each other count as equal", 100 * lesson.close)
                       : "");
  std::string limits;
  for (std::size_t i = 0; i + 1 < lesson.choices.size(); ++i)
    limits +=
      fmt::format("{}choice {} below {}", i ? ", " : "", i + 1, limit_text(lesson, lesson.choices[i].below));
  return fmt::format("Limits: {}, else choice {}.", limits, lesson.choices.size());
}

std::string verdict_text(const Lesson &lesson, std::size_t right, std::optional<std::size_t> guess)
{
  const auto &text = lesson.choices[right].text;
  if (!guess)
    return fmt::format("The numbers say {}: {}.", right + 1, text);
  if (*guess == right)
    return fmt::format("Your guess was right, {}: {}.", right + 1, text);
  return fmt::format("Your guess was {}; the numbers say {}: {}.", *guess + 1, right + 1, text);
}
} // namespace

std::size_t right_choice(const Lesson &lesson, const std::vector<Run> &runs)
{
  return lesson.rule == Lesson::Rule::limits ? by_limits(lesson, runs) : by_size(lesson, runs);
}

LessonAnswer answer_lesson(const CaseFile &file, const std::vector<Run> &runs,
                           std::optional<std::size_t> guess)
{
  const Lesson &lesson = *file.lesson;
  LessonAnswer  answer;
  answer.title = file.title;
  answer.question = file.question;
  answer.guess = guess;
  answer.source = lesson.source;
  answer.right = right_choice(lesson, runs);
  answer.verdict = verdict_text(lesson, answer.right, guess);
  answer.because = filled(lesson.choices[answer.right].because, runs);
  answer.rule = rule_text(lesson);
  for (const auto &choice : lesson.choices)
    answer.choices.push_back(choice.text);
  for (const auto &paragraph : lesson.explanation)
    answer.explanation.push_back(filled(paragraph, runs));
  const auto add = [&](const ReadingMeasure &measure) {
    const double value = measured(measure, runs);
    answer.decided_by.push_back({spoken(measure), measured_text(measure, value, value < 0), value});
  };
  if (lesson.measure)
    add(*lesson.measure);
  for (const auto &choice : lesson.choices)
    if (choice.measure)
      add(*choice.measure);
  return answer;
}
} // namespace solemech::tools::learn
