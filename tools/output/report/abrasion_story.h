// SPDX-License-Identifier: Apache-2.0
// What a report says of an abrasion bench: how deep the abrasive went, through which layers, how warm the
// face got.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// True when the run is an abrasion bench that gave readings.
bool has_abraded(const Run &run);

/// The three of the report's beginning, of a run that has_abraded.
std::string              abrasion_sentence(const Run &run);
std::vector<Headline>    abrasion_headline(const Run &run);
std::vector<std::string> abrasion_story(const Run &run);
std::string              abrasion_moment(const Run &run);
} // namespace solemech::tools::report
