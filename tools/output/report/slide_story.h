// SPDX-License-Identifier: Apache-2.0
// A slide of a tread bar in plain words: one sentence, three numbers, what the bar did.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// True for a slide that gave readings.
bool has_slid(const Run &run);

/// Grip, contact and pressure at the edge in one sentence. For a run of which has_slid() holds; so the rest.
std::string slide_sentence(const Run &run);

/// Grip, contact, pressure at the edge.
std::vector<Headline> slide_headline(const Run &run);

/// Load and floor, what the bar did, what the face lost to friction.
std::vector<std::string> slide_story(const Run &run);

/// Words below the drawing of the moment.
std::string slide_moment(const Run &run);
} // namespace solemech::tools::report
