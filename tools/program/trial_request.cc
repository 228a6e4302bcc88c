// SPDX-License-Identifier: Apache-2.0
#include "tools/program/trial_request.h"

namespace solemech::tools
{
CommandText text_of(const TrialRequest &)
{
  return {"trial", "Try a change before cutting a shoe: before, after, and what it costs", R"(Examples:
  solemech trial heel-drop --swap "insert = eva-insert 3 mm"
  solemech trial heel-drop --swap "insert = pp-semirigid 2 mm + eva-soft 2 mm" --player "95 kg"
  solemech trial forefoot-drop --swap "unit = 10 mm" --range gauge_pressure="80..200 kPa"
  solemech trial my-heel.toml --range core.thickness="12..20 mm by 2 mm" --json > trial.json

A swap names a layer and what replaces it: a material, a thickness or both. Join several sheets with +, foot side
first. Write none to take the layer out. LAYER.ENTRY = VALUE changes one entry. If there is no layer called insert
(or footbed, sockliner), it is added on top of the lasting board. A range varies one entry of the changed stack.
The last part of its name is enough if no other entry has that name.
Without -o the results go to results/trial-<label>/<number> in the current folder.
)"};
}

void describe(Options &options, TrialRequest &request)
{
  options.name(request.name, "CASE", "Name of a prebuilt case, or a case file",
               "`trial` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones.");
  options.repeated("--swap", request.swaps, "\"LAYER = ...\"", "What replaces a layer. May be repeated");
  options.text("--range", request.range, "RANGE", "One entry over a range: ENTRY=LOW..HIGH UNIT [by STEP]");
  options.text("--player", request.player, "MASS", "Body mass: does it bottom under a step?");
  options.settings(request.settings);
  options.output(request, "results/trial-<label>/<number>");
  options.lengths(request);
  options.flag("--json", request.json, "Print the results as JSON instead of the table");
  options.flag("--details", request.details,
               "Also print more decimals, how the calculation went and the number of runs");
  options.flag("-q,--quiet", request.quiet, "No commentary and no progress bar; errors still appear");
}

void check(const Options &, const TrialRequest &request)
{
  if (request.swaps.empty() && request.range.empty() && request.player.empty())
    throw UsageError(
      "`trial` needs a change, for example --swap \"insert = eva-insert 3 mm\", or a --range.");
}
} // namespace solemech::tools
