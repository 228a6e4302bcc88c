// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_request.h"

namespace solemech::tools
{
CommandText text_of(const PlanRequest &)
{
  return {"plan", "Show in which order to take a pair apart, and which reading to take next", R"(Examples:
  solemech plan my-pair-heel.toml
  solemech plan my-pair.toml --for force
  solemech plan my-pair-heel.toml > plan.txt

Lists the order of work first: steps that destroy nothing, then each cut and what it makes impossible. Then the
readings you could take next, ranked by how far each narrows the ± of the rebound (or of the reading --for names)
on the rig of the sheet, and what is not worth doing. Of a pair, a plan for each part: both are fitted together.
Uses the runs that `solemech run` made for the sheet in this folder.
)"};
}

void describe(Options &options, PlanRequest &request)
{
  options.names(request.sheets, "SHEET", "A bench sheet, or a pair: one file with both parts, or two sheets",
                "`plan` needs a bench sheet, for example `solemech plan my-pair-heel.toml`.");
  options.choice("--for", request.question, plan_question_names(), "NUMBER", "Reading to narrow");
  options.flag("--json", request.json, "Print the plan as JSON");
  options.flag("-q,--quiet", request.quiet, "No progress bar; errors still appear");
}

void check(const Options &, const PlanRequest &request)
{
  if (request.sheets.size() > 2)
    throw UsageError("`plan` takes one bench sheet, or the two sheets of a pair.");
}
} // namespace solemech::tools
