// SPDX-License-Identifier: Apache-2.0
#include "tools/program/help_request.h"

namespace solemech::tools
{
CommandText text_of(const HelpRequest &)
{
  return {"help", "Print help on the program or on a command", R"(Examples:
  solemech help
  solemech help run
)"};
}

void describe(Options &options, HelpRequest &request)
{
  options.name(request.topic, "COMMAND", "A command");
}
} // namespace solemech::tools
