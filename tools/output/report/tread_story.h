// SPDX-License-Identifier: Apache-2.0
// The grip of a whole sole in plain words and charts: at headings all round, against turning, under a tilted foot.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// True for a map of a sole that gave readings.
bool has_tread_map(const Run &run);

/// Where it grips least and most, and what holds it on the ball. For a run of which has_tread_map() holds; so the rest.
std::string tread_sentence(const Run &run);

/// Side cut, push-off and the pivot.
std::vector<Headline> tread_headline(const Run &run);

/// Movements, zones, pivot, tilted foot.
std::vector<std::string> tread_story(const Run &run);

/// Charts of the runs that are maps; none: nothing.
std::vector<LineBlock> tread_blocks(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
