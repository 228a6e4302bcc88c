// SPDX-License-Identifier: Apache-2.0
#include "tools/program/materials_request.h"

namespace solemech::tools
{
CommandText text_of(const MaterialsRequest &)
{
  return {"materials", "List the material library, describe materials in full, or find the nearest",
          R"(Examples:
  solemech materials
  solemech materials eva-soft
  solemech materials eva-soft peba-supercritical
  solemech materials --like "55 AskerC, 200 kg/m3, 48 % ball"
)"};
}

void describe(Options &options, MaterialsRequest &request)
{
  options.names(request.names, "NAME", "Materials to describe. Without a name: the table");
  options.text("--like", request.like, "READINGS",
               "List the materials nearest to what you have read: a hardness, a density, % ball rebound, "
               "% pulse return, a modulus");
}
} // namespace solemech::tools
