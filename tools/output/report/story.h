// SPDX-License-Identifier: Apache-2.0
// What happened in one run, in plain words and only from its own numbers: one sentence, three numbers, the
// order of events, captions for the blocks of the page.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/rigs/shown.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
using blocks::block;
using blocks::field;
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

// Tables: a row is read as one line.
// clang-format off
struct BlockCaptions { std::string section, moment, loop, motion, energy; };
constexpr auto block_of(const BlockCaptions *)
{
  using S = BlockCaptions;
  return block<S>("Captions", "One sentence for each block, for copying and saved pictures.",
    field(&S::section, "section"), field(&S::moment, "moment"), field(&S::loop, "loop"),
    field(&S::motion, "motion"), field(&S::energy, "energy"));
}
// clang-format on

BlockCaptions captions_block(const Run &run);
} // namespace solemech::tools::report
