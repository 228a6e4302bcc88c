// SPDX-License-Identifier: Apache-2.0
// What a report says of a lug that was worn down: where it wears first, how long it lasts, what its grip does
// meanwhile.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// True when the run is a wear that gave readings.
bool has_worn(const Run &run);

/// The three of the report's beginning, of a run that has_worn.
std::string              wear_sentence(const Run &run);
std::vector<Headline>    wear_headline(const Run &run);
std::vector<std::string> wear_story(const Run &run);
std::string              wear_moment(const Run &run);
} // namespace solemech::tools::report
