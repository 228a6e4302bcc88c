// SPDX-License-Identifier: Apache-2.0
// Which reading to take next: each one that could be taken is ranked by what it leaves of the band of the
// number asked for. Linear in the settled model (settle::rank_readings), each reading alone, with the +- of
// its instrument.
#pragma once

#include "tools/answers/sheet/plan_question.h"
#include "tools/answers/sheet/settle_sheet.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct PlannedReading
{
  std::string name, instrument;
  std::string needs; ///< what has to be cut for it
  std::string note;
  double      half_band = 0; ///< of the number asked for, once this reading is on the sheet
  bool        worth = true;  ///< narrows it by a twentieth or more
};

struct ReadingPlan
{
  PlanQuestion                question;
  settle::Band                now;
  std::vector<PlannedReading> ranked;   ///< best first
  std::vector<std::string>    left_out; ///< sentences: already on the sheet, could not be computed
  std::vector<std::string>    doubts;   ///< sentences: why the ranking may be weak
};

/// Settles sheets that were read on one rod together, and ranks for each. Lower drops and a slow press are
/// computed round the settled values. The rig of each sheet has to be a drop weight.
/// @throws what settle_together throws
std::vector<ReadingPlan> plan_readings(const std::vector<Sheet> &sheets, const PlanQuestion &question,
                                       Job &job);

/// Order of teardown, next readings and cautions as text.
std::string plan_text(const Sheet &sheet, const ReadingPlan &plan);

/// The same as JSON, in SI: one object; a list of them for several sheets.
std::string plan_json(const std::vector<Sheet> &sheets, const std::vector<ReadingPlan> &plans);
} // namespace solemech::tools
