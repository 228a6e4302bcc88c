// SPDX-License-Identifier: Apache-2.0
// solemech compare, the part before any calculation: inputs are read and checked, a comparison that was made
// before is answered from its folder, everything else goes to the solver program.
#include "tools/program/commands.h"
#include "tools/program/compare_answer.h"
#include "tools/program/compare_inputs.h"
#include "tools/program/hand_over.h"

namespace solemech::tools
{
Exit compare(const CompareRequest &request, const std::vector<std::string> &arguments)
{
  const CompareInputs inputs = read_compare_inputs(request.cases);
  if (const auto folder = finished_comparison(request, inputs.record))
  {
    print_finished_comparison(*folder, request);
    return Exit::ok;
  }
  hand_over(arguments);
}
} // namespace solemech::tools
