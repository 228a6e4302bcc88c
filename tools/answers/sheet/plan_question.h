// SPDX-License-Identifier: Apache-2.0
// The numbers that a plan can be made for.
#pragma once

#include "solver/results/catalogue.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// A number of this sheet's own rig that a plan can be made for.
struct PlanQuestion
{
  const char                *name;    ///< on the command line
  const char                *title;   ///< for people
  const solver::ReadingKind *reading; ///< of the result
};

/// The first one is the default.
inline constexpr PlanQuestion plan_questions[] = {
  {"rebound", "rebound by height", &solver::catalogue.rebound_by_height},
  {"force", "peak force", &solver::catalogue.peak_force},
  {"compression", "compression", &solver::catalogue.greatest_compression},
};

inline std::vector<std::string> plan_question_names()
{
  std::vector<std::string> names;
  for (const auto &question : plan_questions)
    names.emplace_back(question.name);
  return names;
}
} // namespace solemech::tools
