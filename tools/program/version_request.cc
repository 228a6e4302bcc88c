// SPDX-License-Identifier: Apache-2.0
#include "tools/program/version_request.h"

namespace solemech::tools
{
CommandText text_of(const VersionRequest &)
{
  return {"version", "Print the version", R"(Examples:
  solemech --version
  solemech version --verbose
)"};
}

void describe(Options &options, VersionRequest &request)
{
  options.flag("-v,--verbose", request.verbose, "Also show how this program was built");
}
} // namespace solemech::tools
