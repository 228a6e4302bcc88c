// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech plan`.
#pragma once

#include "tools/answers/sheet/plan_question.h"
#include "tools/program/options.h"

namespace solemech::tools
{
struct PlanRequest : AnswerWish
{
  std::vector<std::string> sheets;                            ///< a bench sheet, or a pair as `pair` takes it
  std::string              question = plan_questions[0].name; ///< number that is to be narrowed
};

CommandText text_of(const PlanRequest &);
void        describe(Options &options, PlanRequest &request);
/// @throws UsageError
void check(const Options &options, const PlanRequest &request);
} // namespace solemech::tools
