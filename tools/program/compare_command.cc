// SPDX-License-Identifier: Apache-2.0
// solemech compare, the part before any calculation: inputs are read and checked, a comparison that was made
// before is answered from its folder, everything else goes to the solver program.
#include "tools/program/commands.h"
#include "tools/program/compare_answer.h"
#include "tools/program/compare_inputs.h"
#include "tools/program/hand_over.h"
#include "tools/program/sheet_input.h"

namespace solemech::tools
{
Exit compare(const CompareRequest &given, const std::vector<std::string> &arguments)
{
  CompareRequest request = given;
  for (auto &name : request.cases)
    if (const auto path = sheet_among({name}))
    {
      const auto sheet = settleable_sheet(*path, {}); // mistakes are told at once
      const auto place = finished_sheet(sheet, std::nullopt);
      if (!place)
        hand_over(arguments);
      name = (*place / "settled.toml").string();
      request.labels[name] = sheet.file.label;
    }
  const CompareInputs inputs = read_compare_inputs(request);
  if (const auto folder = finished_comparison(request, inputs.record))
  {
    print_finished_comparison(*folder, request);
    return Exit::ok;
  }
  hand_over(arguments);
}
} // namespace solemech::tools
