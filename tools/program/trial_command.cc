// SPDX-License-Identifier: Apache-2.0
// solemech trial, the part before any calculation: case, swaps, range and player are read and checked, a
// trial that was made before is answered from its folder, and everything else goes to the solver program.
#include "tools/program/answers.h"
#include "tools/program/commands.h"
#include "tools/program/hand_over.h"
#include "tools/program/sheet_input.h"
#include "tools/program/trial_record.h"

namespace solemech::tools
{
namespace
{
/// A bench sheet that was settled before is taken as its settled stack. For one that was not, everything
/// asked for is checked at its middle values, before the solver settles it.
TrialRequest with_settled(TrialRequest request, bool &is_open)
{
  const auto path = sheet_among({request.name});
  if (!path)
    return request;
  const auto sheet = settleable_sheet(*path, {});
  request.sheet = *path;
  request.label = sheet.file.label;
  if (const auto place = finished_sheet(sheet, std::nullopt))
  {
    request.name = (*place / "settled.toml").string();
    return request;
  }
  is_open = true;
  request.text = sheet.case_text;
  request.settings.insert(request.settings.begin(), sheet.taken.begin(), sheet.taken.end());
  return request;
}
} // namespace

Exit try_change(const TrialRequest &given, const std::vector<std::string> &arguments)
{
  bool            is_open = false;
  const auto      request = with_settled(given, is_open);
  const RunRecord record = trial_record(trial_input(request));
  const bool      stored_text_answers = request.json || (!request.details && request.lengths == "mm");
  const auto      folder = is_open ? std::nullopt : finished_trial(request, record);
  if (!folder || !stored_text_answers)
    hand_over(arguments);
  tell_place(*folder, true, request.quiet);
  print_stored(*folder, request.json ? "data/trial.json" : "summary.txt");
  return Exit::ok;
}
} // namespace solemech::tools
