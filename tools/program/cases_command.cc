// SPDX-License-Identifier: Apache-2.0
// solemech cases: the prebuilt cases under the question they answer.
#include "tools/language/case_file.h"
#include "tools/program/commands.h"
#include "tools/program/places.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>

#include <map>

namespace solemech::tools
{
Exit list_cases(const CasesRequest &)
{
  std::map<std::string, TextTable> groups;
  for (const CaseHeading &each : case_headings({case_folder()}))
  {
    auto &table = groups.try_emplace(each.group, std::vector<Align>{Align::left, Align::left}).first->second;
    table.add_row({each.label, each.question.empty() ? each.title : each.question});
  }
  if (groups.empty())
    throw MissingPart(fmt::format("there are no cases in '{}'.", case_folder().string()));

  for (const auto &[group, table] : groups)
    fmt::print("{}\n{}\n", heading(group), table.text(2, page_width()));
  fmt::print("Run one: solemech run {}\n", case_headings({case_folder()}).front().label);
  return Exit::ok;
}
} // namespace solemech::tools
