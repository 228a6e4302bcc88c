// SPDX-License-Identifier: Apache-2.0
#include "tools/program/draw_request.h"

#include <fmt/format.h>

#include <filesystem>

namespace solemech::tools
{
CommandText text_of(const DrawRequest &)
{
  return {"draw", "Draw a whole sole to scale: from above, along and across, with its dimensions",
          R"(Examples:
  solemech draw my-sole.toml
  solemech draw hall-two-units
  solemech draw my-sole.toml -o sole.svg
  solemech draw my-sole.toml --json

Reads a sole file, writes the drawing as SVG for any browser, and prints length, widths, heights, drop, toe spring and
an estimate of the mass. Nothing is calculated. `solemech sheet --sole my-sole.toml` writes a sole file to fill in.
Prepared soles: hall-plain, hall-two-units, hall-forked; all are invented.
)"};
}

void describe(Options &options, DrawRequest &request)
{
  options.name(request.sole, "SOLE", "Sole file, or name of a prepared sole",
               "`draw` needs a sole file, for example `solemech draw my-sole.toml`.");
  options.text("-o,--output", request.output, "FILE", "File of the drawing (default NAME-drawing.svg)");
  options.flag("--json", request.json, "Print what the sole measures as JSON, in SI units");
}

void check(const Options &, const DrawRequest &request)
{
  if (!request.output.empty() && std::filesystem::path(request.output).extension() != ".svg")
    throw UsageError(fmt::format("'{}': the name of a drawing must end in .svg.", request.output));
}
} // namespace solemech::tools
