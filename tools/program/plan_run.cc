// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_run.h"

#include "tools/answers/sheet/reading_plan.h"
#include "tools/program/sheet_input.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <iterator>

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, Job &job)
{
  const auto *question = std::ranges::find(plan_questions, request.question, &PlanQuestion::name);
  assert(question != std::end(plan_questions)); // the option takes no other
  const auto sheet = settleable_sheet(request.sheet, {});
  const auto plan = plan_readings(sheet, *question, job);
  fmt::print("{}", request.json ? plan_json(sheet, plan) : plan_text(sheet, plan));
  return Exit::ok;
}
} // namespace solemech::tools
