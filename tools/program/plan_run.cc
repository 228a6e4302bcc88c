// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_run.h"

#include "tools/answers/sheet/reading_plan.h"
#include "tools/program/sheet_input.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, Job &job)
{
  const auto &questions = plan_questions();
  const auto  question = std::find_if(questions.begin(), questions.end(),
                                      [&](const auto &one) { return one.name == request.question; });
  if (question == questions.end())
    throw UsageError(fmt::format("--for {}: choose rebound, force or compression.", request.question));
  const auto sheet = settleable_sheet(request.sheet, {});
  const auto plan = plan_readings(sheet, *question, job);
  fmt::print("{}", request.json ? plan_json(sheet, plan) : plan_text(sheet, plan));
  return Exit::ok;
}
} // namespace solemech::tools
