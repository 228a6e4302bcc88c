// SPDX-License-Identifier: Apache-2.0
#include "tools/program/run_request.h"

namespace solemech::tools
{
CommandText text_of(const RunRequest &)
{
  return {"run", "Run cases, side by side when several are named", R"(Examples:
  solemech run heel-drop
  solemech run heel-drop forefoot-drop --details
  solemech run my-pair-heel.toml -o pair-07 --lengths cm
  solemech run heel-drop --set core.thickness="14 mm" --set core.material="eva-firm" --json > heel.json

Name a layer, then its entry: core.thickness. If the inputs are the same as before, the finished run answers.
Without -o the results go to results/<label>/<number> in the current folder; those of a run changed with --set go
to results/<label>-changed/<number>.
)"};
}

void describe(Options &options, RunRequest &request)
{
  options.names(request.cases, "CASE", "Names of prebuilt cases, or case files",
                "`run` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones.");
  options.output(request, "results/<label>/<number>");
  options.settings(request.settings);
  options.lengths(request);
  options.flag("--json", request.json, "Print the results as JSON instead of the summary");
  options.flag("--details", request.details,
               "Also print all three energy returns, energies in J and how the calculation went");
  options.flag("-q,--quiet", request.quiet, "No commentary and no progress bar; errors still appear");
}
} // namespace solemech::tools
