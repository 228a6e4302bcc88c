// SPDX-License-Identifier: Apache-2.0
#include "tools/program/cases_request.h"

namespace solemech::tools
{
CommandText text_of(const CasesRequest &)
{
  return {"cases", "List the prebuilt cases by the question they answer", R"(Examples:
  solemech cases
  solemech cases | grep -i drop
)"};
}

void describe(Options &, CasesRequest &) {}
} // namespace solemech::tools
