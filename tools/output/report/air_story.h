// SPDX-License-Identifier: Apache-2.0
// What the gas, the fibres and the film of an air unit did in a run, in words.
#pragma once

#include "tools/output/results/run_record.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// One paragraph an air unit; none for a stack without.
std::vector<std::string> air_story(const Run &run);
} // namespace solemech::tools::report
