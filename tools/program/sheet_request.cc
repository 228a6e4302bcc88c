// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sheet_request.h"

#include <fmt/format.h>

namespace solemech::tools
{
CommandText text_of(const SheetRequest &)
{
  return {"sheet", "Write a bench sheet, or a rig file, to fill in with your own numbers", R"(Examples:
  solemech sheet my-heel.toml
  solemech sheet my-forefoot.toml --part forefoot
  solemech sheet --rig my-rod.toml

Writes a file to fill in, with remarks on what to read, with which tool, and which doubt is taken when you write
none. It can be checked as it stands, but all its numbers are invented: put yours in their place. A file that is
there already is never touched, and the folder must exist.
)"};
}

void describe(Options &options, SheetRequest &request)
{
  options.name(request.file, "FILE", "File to write, my-heel.toml",
               "`sheet` needs the file to write, for example `solemech sheet my-heel.toml`.");
  options.choice("--part", request.part, {"heel", "forefoot"}, "PART", "Part of the shoe");
  options.flag("--rig", request.rig, "A rig file instead: weight, height, face, guide loss, base");
}

void check(const Options &options, const SheetRequest &request)
{
  if (request.rig && options.given("--part"))
    throw UsageError("--part and --rig do not go together: a rig is the same for heel and forefoot.");
  if (const std::filesystem::path path(request.file); path.extension() != ".toml")
    throw UsageError(fmt::format("'{}': the name of a sheet ends in .toml. Write for instance '{}.toml'.",
                                 request.file,
                                 path.stem().empty() || path.stem() == ".toml" ? "my-heel" : request.file));
}
} // namespace solemech::tools
