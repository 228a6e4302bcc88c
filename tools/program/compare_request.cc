// SPDX-License-Identifier: Apache-2.0
#include "tools/program/compare_request.h"

namespace solemech::tools
{
CommandText text_of(const CompareRequest &)
{
  return {"compare", "Explain why two cases read differently: the share of each change", R"(Examples:
  solemech compare heel-drop forefoot-drop
  solemech compare my-heel.toml heel-drop --details
  solemech compare results/heel-drop/1 results/heel-drop-changed/1 -o thicker-core
  solemech compare predecessor --json > predecessor.json

Shows what differs, what that does to the readings, and how much each change contributes: its share, averaged over
every order in which the changes can be made. This needs runs of mixtures of the two cases. They are kept in
results/.runs: a finished run is never repeated, even after a stop.
A bench sheet is fitted to its readings first; for heel and forefoot read under one rod use `solemech pair`.
If you name several cases, each is compared with the first. Repeating a comparison shows the results in its folder,
results/compare-<first>-<other>/<number>.
)"};
}

void describe(Options &options, CompareRequest &request)
{
  options.names(
    request.cases, "CASE", "Prebuilt cases, case files, bench sheets, or folders of finished runs",
    "`compare` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones.");
  options.output(request, "results/compare-<cases>/<number>");
  options.flag("--json", request.json, "Print the results as JSON instead of the summary");
  options.flag("--details", request.details,
               "Print all readings, more decimals, and what changes do together");
  options.flag("-q,--quiet", request.quiet, "No commentary and no progress bar; errors still appear");
}
} // namespace solemech::tools
