// SPDX-License-Identifier: Apache-2.0
#include "tools/program/plan_request.h"

namespace solemech::tools
{
CommandText text_of(const PlanRequest &)
{
  return {"plan", "Say in which order to take a pair apart, and which reading helps most next", R"(Examples:
  solemech plan my-pair-heel.toml
  solemech plan my-pair-heel.toml --for force
  solemech plan my-pair-heel.toml > plan.txt

First the order of work: what destroys nothing, then each cut and what it ends for good. Then the readings that
could be taken next, ranked by how far each narrows the band of the rebound (or of what --for names) on the rig of
the sheet, and what is not worth doing. Runs that `solemech run` made for the sheet in this folder are used again.
)"};
}

void describe(Options &options, PlanRequest &request)
{
  options.name(request.sheet, "SHEET", "A bench sheet",
               "`plan` needs a bench sheet, for example `solemech plan my-pair-heel.toml`.");
  options.choice("--for", request.question, {"rebound", "force", "compression"}, "NUMBER",
                 "Number to narrow");
  options.flag("--json", request.json, "Print the plan as JSON");
  options.flag("-q,--quiet", request.quiet, "No progress; errors still appear");
}
} // namespace solemech::tools
