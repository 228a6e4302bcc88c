// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_run.h"

#include "tools/answers/sheet/reading_plan.h"
#include "tools/program/sheet_input.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, Job &job)
{
  const auto *question = std::ranges::find(plan_questions, request.question, &PlanQuestion::name);
  if (question == std::end(plan_questions))
    throw UsageError(
      fmt::format("--for {}: choose one of {}.", request.question, fmt::join(plan_question_names(), ", ")));
  const auto sheet = settleable_sheet(request.sheet, {});
  const auto plan = plan_readings(sheet, *question, job);
  fmt::print("{}", request.json ? plan_json(sheet, plan) : plan_text(sheet, plan));
  return Exit::ok;
}
} // namespace solemech::tools
