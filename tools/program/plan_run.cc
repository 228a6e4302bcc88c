// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_run.h"

#include "tools/answers/sheet/reading_plan.h"
#include "tools/program/sheet_settling.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, const Solve &solve, const std::atomic<bool> &interrupted)
{
  const auto &questions = plan_questions();
  const auto  question = std::find_if(questions.begin(), questions.end(),
                                      [&](const auto &one) { return one.name == request.question; });
  if (question == questions.end())
    throw UsageError(fmt::format("--for {}: choose rebound, force or compression.", request.question));
  const auto sheet = settleable_sheet(request.sheet, {});
  return with_kept_runs(solve, request.quiet, expected_runs(sheet, {}, {}), interrupted,
                        [&](const RunCases &run, Progress &progress) {
                          const auto plan = plan_readings(sheet, *question, run, interrupted);
                          progress.clear();
                          fmt::print("{}", request.json ? plan_json(sheet, plan) : plan_text(sheet, plan));
                          return Exit::ok;
                        });
}
} // namespace solemech::tools
