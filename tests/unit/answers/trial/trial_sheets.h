// SPDX-License-Identifier: Apache-2.0
// Trials of the prepared cases with the real library, for tests.
#pragma once

#include "tools/answers/trial/trial_input.h"
#include "tools/language/library.h"

#include <string>

namespace solemech::tests
{
inline tools::TrialInput trial_of(const std::string &name, const std::vector<std::string> &swaps,
                                  const std::string &range = "", const std::string &player = "")
{
  const std::string  source = SOLEMECH_SOURCE;
  static const auto  library = materials::Library::load(source + "/materials/library");
  tools::ReadOptions options;
  options.case_roots = {source + "/cases"};
  options.library = library.source();
  tools::TrialRequest request;
  request.name = name;
  request.swaps = swaps;
  request.range = range;
  request.player = player;
  return tools::read_trial(request, tools::find_case(name, options.case_roots), options);
}
} // namespace solemech::tests
