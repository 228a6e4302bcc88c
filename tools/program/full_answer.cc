// SPDX-License-Identifier: Apache-2.0
#include "tools/program/full_answer.h"

#include "tools/program/calculate.h"
#include "tools/program/compare_run.h"
#include "tools/program/learn_run.h"
#include "tools/program/plan_run.h"
#include "tools/program/trial_run.h"

namespace solemech::tools
{
namespace
{
struct FullAnswer
{
  const Solve             &solve;
  const std::atomic<bool> &interrupted;

  Exit operator()(const RunRequest &request) const { return calculate(request, solve, interrupted); }
  Exit operator()(const CompareRequest &request) const
  {
    return calculate_comparison(request, solve, interrupted);
  }
  Exit operator()(const LearnRequest &request) const
  {
    return answer_lesson_request(request, solve, interrupted);
  }
  Exit operator()(const TrialRequest &request) const { return answer_trial(request, solve, interrupted); }
  Exit operator()(const PlanRequest &request) const { return answer_plan(request, solve, interrupted); }
  template <typename Other>
  Exit operator()(const Other &) const
  {
    throw UsageError("this is the solver behind `solemech run`; call `solemech` instead.");
  }
};
} // namespace

Exit full_answer(const Request &request, const Solve &solve, const std::atomic<bool> &interrupted)
{
  return std::visit(FullAnswer{solve, interrupted}, request);
}
} // namespace solemech::tools
