// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/sheet_input.h"

#include "materials/sheet.h"
#include "tools/sheet/sheet.h"
#include "tools/solemech/command_line.h"

#include <fmt/format.h>

namespace solemech::tools
{
std::optional<std::filesystem::path> sheet_among(const std::vector<std::string> &names)
{
  for (const auto &name : names)
  {
    std::error_code error;
    if (!name.ends_with(".toml") || !std::filesystem::is_regular_file(name, error))
      continue;
    materials::Problems told_later; // whoever reads the file next
    if (!is_sheet(materials::read_sheet_text(name, told_later)))
      continue;
    if (names.size() > 1)
      throw UsageError(
        fmt::format("'{}' is a bench sheet: settle it alone, then compare the settled.toml in its "
                    "results folder with other cases.",
                    name));
    return name;
  }
  return std::nullopt;
}
} // namespace solemech::tools
