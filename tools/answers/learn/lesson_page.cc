// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/lesson_page.h"

#include "tools/output/report/report_page.h"
#include "tools/output/results/json_output.h"

namespace solemech::tools::learn
{
report::Page lesson_page(const LessonAnswer &answer, const RunRecord &record)
{
  report::Page   page = report::run_page(record);
  report::Lesson lesson{answer.question, answer.choices, answer.right, {answer.because}, answer.guess};
  lesson.explanation.insert(lesson.explanation.end(), answer.explanation.begin(), answer.explanation.end());
  for (const auto &number : answer.decided_by)
    lesson.explanation.push_back(number.words + ": " + number.value);
  lesson.explanation.push_back(answer.rule);
  lesson.explanation.push_back("Outside of this program: " + answer.source);
  page.kind = report::PageKind::lesson;
  page.title = answer.title;
  page.label = record.label;
  page.lesson = std::move(lesson);
  return page;
}

std::string lesson_json(const LessonAnswer &answer, const RunRecord &record)
{
  Json numbers = Json::array();
  for (const auto &number : answer.decided_by)
    numbers.push_back({{"what", number.words}, {"text", number.value}, {"value", number.size}});
  const Json lesson = {
    {"question", answer.question}, {"choices", answer.choices},
    {"answer", answer.right + 1},  {"guess", answer.guess ? Json(*answer.guess + 1) : Json(nullptr)},
    {"because", answer.because},   {"explanation", answer.explanation},
    {"decided_by", numbers},       {"rule", answer.rule},
    {"source", answer.source}};
  Json whole = records_json({record});
  whole["lesson"] = lesson;
  return text_of(whole, 2) + "\n";
}
} // namespace solemech::tools::learn
