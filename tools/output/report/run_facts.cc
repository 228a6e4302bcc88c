// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/run_facts.h"

namespace solemech::tools::report
{
LabelledCases labelled_cases(const std::vector<const Run *> &runs)
{
  LabelledCases cases;
  for (const auto *run : runs)
    cases.emplace_back(run->label, &run->setup);
  return cases;
}
} // namespace solemech::tools::report
