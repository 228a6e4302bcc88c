// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_run.h"

#include "tools/answers/sheet/reading_plan.h"
#include "tools/program/pair_input.h"

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
  const auto sheets = planned_sheets(request);
  const auto plans = plan_readings(sheets, *question, job);
  if (request.json)
    fmt::print("{}", plan_json(sheets, plans));
  for (std::size_t i = 0; i < sheets.size() && !request.json; ++i)
    fmt::print("{}{}", i > 0 ? "\n" : "", plan_text(sheets[i], plans[i]));
  return Exit::ok;
}
} // namespace solemech::tools
