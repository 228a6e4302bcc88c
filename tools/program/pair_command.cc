// SPDX-License-Identifier: Apache-2.0
// solemech pair, the part before any calculation: both sheets are read and checked, a pair that was settled
// before is answered from its folder, everything else goes to the solver program.
#include "tools/program/answers.h"
#include "tools/program/commands.h"
#include "tools/program/hand_over.h"
#include "tools/program/pair_input.h"

namespace solemech::tools
{
Exit settle_pair_of_sheets(const PairRequest &request, const std::vector<std::string> &arguments)
{
  const auto folder = finished_pair(pair_record(pair_named(request.files, request.settings)), request);
  if (!folder)
    hand_over(arguments);
  tell_place(*folder, true, request.quiet);
  print_stored(*folder, request.json ? pair_values : request.details ? pair_details : pair_summary);
  return Exit::ok;
}
} // namespace solemech::tools
