// SPDX-License-Identifier: Apache-2.0
// solemech plan, the part before any calculation: the sheet is read and checked, then the solver program
// answers.
#include "tools/program/commands.h"
#include "tools/program/hand_over.h"
#include "tools/program/pair_input.h"
#include "tools/program/sheet_input.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

namespace solemech::tools
{
Exit plan_sheet(const PlanRequest &request, const std::vector<std::string> &arguments)
{
  std::error_code error;
  for (const auto &name : request.sheets)
    if (!std::filesystem::is_regular_file(name, error))
      throw UsageError(
        fmt::format("there is no file '{}'. `plan` needs a bench sheet, for example `solemech plan "
                    "my-pair-heel.toml`.",
                    name));
    else if (!sheet_among({name}))
      throw UsageError(fmt::format("'{}' is not a bench sheet: it has no unknown, no ± and no reading. "
                                   "`solemech sheet` writes a bench sheet to fill in.",
                                   name));
  for (const auto &sheet : planned_sheets(request))
    if (!rigs::fall_of(sheet.setup))
      throw UsageError(fmt::format("'{}': a plan ranks readings of a drop weight, and this sheet has another "
                                   "rig. Give rig = \"guided-rod-1200\" or a block [drop].",
                                   sheet.path.string()));
  hand_over(arguments);
}
} // namespace solemech::tools
