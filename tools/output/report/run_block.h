// SPDX-License-Identifier: Apache-2.0
// One run of a page, put together from its blocks.
#pragma once

#include "tools/output/report/frames_block.h"
#include "tools/output/report/readings_block.h"
#include "tools/output/report/section_block.h"
#include "tools/output/report/story.h"

namespace solemech::tools::report
{
// Tables: a row is read as one line.
// clang-format off
struct RunBlock
{
  std::string               label, title, rig;
  std::vector<std::string>  changes;
  bool                      complete = true;
  std::string               stop_reason;
  std::vector<ReadingBlock> readings;
  std::vector<solver::Warning> warnings;
  std::vector<PartBlock>    parts;
  std::optional<Section>    section;
  Curves                    curves;
  std::vector<Gas>          gases;
  std::optional<Energy>     energy;
  std::optional<Frames>     frames;
  BlockCaptions             captions;
};
constexpr auto block_of(const RunBlock *)
{
  using S = RunBlock;
  return block<S>("Run", "One run of the page.",
    field(&S::label, "label"), field(&S::title, "title"),
    field(&S::rig, "rig", "one sentence"),
    field(&S::changes, "changes"), field(&S::complete, "complete"), field(&S::stop_reason, "stopReason"),
    field(&S::readings, "readings"), field(&S::warnings, "warnings"), field(&S::parts, "parts"),
    field(&S::section, "section"), field(&S::curves, "curves"), field(&S::gases, "gases"),
    field(&S::energy, "energy"), field(&S::frames, "frames"), field(&S::captions, "captions"));
}
// clang-format on

RunBlock run_block(const Run &run, const RecordFacts &record, const Looks &looks, bool moves);
} // namespace solemech::tools::report
