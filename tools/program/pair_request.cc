// SPDX-License-Identifier: Apache-2.0
#include "tools/program/pair_request.h"

#include <fmt/format.h>

namespace solemech::tools
{
CommandText text_of(const PairRequest &)
{
  return {"pair", "Fit heel and forefoot together, and explain why they read differently", R"(Examples:
  solemech sheet my-pair.toml --pair
  solemech pair my-pair.toml
  solemech pair my-heel.toml my-forefoot.toml
  solemech pair my-pair.toml --set heel.core.thickness="18 mm"

Takes one file with both parts, or a bench sheet of each, read under one rod. Both are fitted at once, with one drop
weight and one guide loss, so that the readings of each say something about the other. Shows what you measured beside
the model, how heel and forefoot differ, the share of each change, and where that is not clear.
Two drop heights are kept apart in the fit, and compared from the height of the heel. A part without readings is
predicted, with a wide band. A change with --set is of both parts, unless it begins with heel. or forefoot.
The results folder holds heel.toml and forefoot.toml, the settled stacks, for `run`, `compare` and `trial`.
)"};
}

void describe(Options &options, PairRequest &request)
{
  options.names(
    request.files, "SHEET", "A file with both parts, or the sheets of heel and forefoot",
    "`pair` needs a file with both parts, or two bench sheets. `solemech sheet my-pair.toml --pair` "
    "writes one to fill in.");
  options.settings(request.settings);
  options.output(request, "results/<pair>/<number>");
  options.flag("--json", request.json, "Print the results as JSON instead of the summary");
  options.flag("--details", request.details,
               "Print all readings, more decimals, and what changes do together");
  options.flag("-q,--quiet", request.quiet, "No commentary and no progress bar; errors still appear");
}

void check(const Options &, const PairRequest &request)
{
  if (request.files.size() > 2)
    throw UsageError(fmt::format("`pair` takes one file with both parts, or two sheets; {} were given.",
                                 request.files.size()));
  for (const auto &name : request.files)
    if (!name.ends_with(".toml"))
      throw UsageError(
        fmt::format("'{}' is not a bench sheet, which is a .toml file. Prebuilt cases and results "
                    "are set side by side by `solemech compare`.",
                    name));
  if (request.files.size() == 2 && request.files[0] == request.files[1])
    throw UsageError(
      fmt::format("'{}' was given twice. Give the sheets of heel and forefoot.", request.files[0]));
}
} // namespace solemech::tools
