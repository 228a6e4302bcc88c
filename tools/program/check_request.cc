// SPDX-License-Identifier: Apache-2.0
#include "tools/program/check_request.h"

namespace solemech::tools
{
CommandText text_of(const CheckRequest &)
{
  return {"check", "Check case and sole files without running them. Shows all mistakes at once", R"(Examples:
  solemech check my-pair-heel.toml
  solemech check heel-drop --set core.thickness="14 mm"
  solemech check my-sole.toml
  solemech check my-pair-heel.toml my-pair-forefoot.toml && echo ready
)"};
}

void describe(Options &options, CheckRequest &request)
{
  options.names(request.files, "FILE", "Case files, or names of prebuilt cases",
                "`check` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones.");
  options.settings(request.settings);
}
} // namespace solemech::tools
