// SPDX-License-Identifier: Apache-2.0
#include "tools/program/compare_request.h"

namespace solemech::tools
{
CommandText text_of(const CompareRequest &)
{
  return {"compare", "Say why one case reads other than another: the share of each change", R"(Examples:
  solemech compare heel-drop forefoot-drop
  solemech compare my-pair-heel.toml heel-drop --details
  solemech compare results/heel-drop/1 results/heel-drop-changed/1 -o thicker-core
  solemech compare predecessor --json > predecessor.json

Says what differs, what that does to the readings, and how much of it each change makes: its share, averaged
over every order in which the changes from the first to the other can be made. Every mixture of the two that this
takes is run and kept in results/.runs: a run that was finished is never repeated, not even after a stop.
Several are each compared with the first. The same comparison again is answered from its folder,
results/compare-<first>-<other>/<number>.
)"};
}

void describe(Options &options, CompareRequest &request)
{
  options.names(
    request.cases, "CASE", "Prebuilt cases, case files, or folders of finished runs",
    "`compare` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones.");
  options.output(request, "results/compare-<cases>/<number>");
  options.flag("--json", request.json, "Print the results as JSON instead of the summary");
  options.flag("--details", request.details, "Print all readings, decimals and what changes do together");
  options.flag("-q,--quiet", request.quiet, "No narration and no progress; errors still appear");
}
} // namespace solemech::tools
