// SPDX-License-Identifier: Apache-2.0
#include "tools/program/materials_request.h"

namespace solemech::tools
{
CommandText text_of(const MaterialsRequest &)
{
  return {"materials", "List the material library, or describe materials in full", R"(Examples:
  solemech materials
  solemech materials eva-soft
  solemech materials eva-soft peba-supercritical
)"};
}

void describe(Options &options, MaterialsRequest &request)
{
  options.names(request.names, "NAME", "Materials to describe. Without a name: the table");
}
} // namespace solemech::tools
