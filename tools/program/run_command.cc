// SPDX-License-Identifier: Apache-2.0
// solemech run, the part before any calculation: all inputs are read and checked, a single case that was
// computed before is answered from its folder, and everything else goes to the solver program, which replaces
// this process.
#include "tools/program/answers.h"
#include "tools/program/commands.h"
#include "tools/program/hand_over.h"
#include "tools/program/inputs.h"
#include "tools/program/record.h"
#include "tools/program/sheet_input.h"

namespace solemech::tools
{
Exit run(const RunRequest &request, const std::vector<std::string> &arguments)
{
  if (const auto sheet = sheet_among(request.cases))
  {
    // Slips are told at once, and an answer that is there already is shown.
    if (const auto folder = finished_sheet(settleable_sheet(*sheet, request.settings), request.output))
    {
      tell_place(*folder, true, request.quiet);
      print_stored(*folder, request.json ? "settled.json" : "summary.txt");
      return Exit::ok;
    }
    hand_over(arguments);
  }
  const std::vector<Input> inputs = read_inputs(request.cases, request.settings);
  if (stored_summary_answers(request))
  {
    const RunRecord record = planned_record(inputs.front());
    // The same numbers may have been reached by changes of the command line, which that summary tells of.
    const auto folder = ResultPlaces(request, 1).finished(record);
    if (folder && stored_text(*folder, "data/case.toml") == record.case_text)
    {
      tell_place(*folder, true, request.quiet);
      print_stored(*folder, "summary.txt");
      return Exit::ok;
    }
  }
  hand_over(arguments);
}
} // namespace solemech::tools
