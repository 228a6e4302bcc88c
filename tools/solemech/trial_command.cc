// SPDX-License-Identifier: Apache-2.0
// solemech trial, the part before any calculation: case, swaps, range and player are read and checked, a
// trial that was made before is answered from its folder, and everything else goes to the solver program.
#include "tools/solemech/answers.h"
#include "tools/solemech/commands.h"
#include "tools/solemech/hand_over.h"
#include "tools/solemech/trial_record.h"

namespace solemech::tools
{
Exit try_change(const TrialRequest &request, const std::vector<std::string> &arguments)
{
  const RunRecord record = trial_record(trial_input(request));
  const bool      stored_text_answers = request.json || (!request.details && request.lengths == "mm");
  const auto      folder = finished_trial(request, record);
  if (!folder || !stored_text_answers)
    hand_over(arguments);
  RunRequest as_run;
  as_run.quiet = request.quiet;
  tell_place(*folder, true, as_run);
  print_stored(*folder, request.json ? "data/trial.json" : "summary.txt");
  return Exit::ok;
}
} // namespace solemech::tools
