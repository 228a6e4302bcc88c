// SPDX-License-Identifier: Apache-2.0
// What happened in one run, in plain words and only from its own numbers: one sentence, three numbers, the
// order of events, captions for the blocks of the page.
#pragma once

#include "tools/output/report/json.h"
#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// Why the run ended before its time; for a run that is not complete.
std::string stopped_early(const Run &run);

/// What its curves hold, for a run without readings.
std::string so_far(const Run &run);

/// The answer of one run in one sentence.
std::string sentence_of(const Run &run);

/// Its three numbers; fewer when the run stopped before they could be read.
std::vector<rigs::Headline> headline_of(const Run &run);

/// Paragraphs in the order of time: touch, greatest depth, way back, where the energy went, air unit,
/// bottoming.
std::vector<std::string> story_of(const Run &run);

/// The type Captions of src/data.ts.
Json captions_json(const Run &run);
} // namespace solemech::tools::report
