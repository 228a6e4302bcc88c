// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sheet_request.h"

#include <fmt/format.h>

namespace solemech::tools
{
CommandText text_of(const SheetRequest &)
{
  return {"sheet", "Write a bench sheet, a rig file or a sole file to fill in with your own numbers",
          R"(Examples:
  solemech sheet my-heel.toml
  solemech sheet my-pair.toml --pair
  solemech sheet --rig my-rod.toml
  solemech sheet --sole my-sole.toml

Writes a file to fill in, with remarks on what to read, with which tool, and which uncertainty (±) is assumed if you
give none. It can be checked as it stands, but all its numbers are invented: replace them with yours. An existing
file is never touched, and the folder must exist.
)"};
}

void describe(Options &options, SheetRequest &request)
{
  options.name(request.file, "FILE", "File to write, my-heel.toml",
               "`sheet` needs the file to write, for example `solemech sheet my-heel.toml`.");
  options.choice("--part", request.part, {"heel", "forefoot"}, "PART", "Part of the shoe");
  options.flag("--pair", request.pair, "Write one file with both parts, read under one rod");
  options.flag("--rig", request.rig, "Write a rig file instead: weight, height, face, guide loss, base");
  options.flag("--sole", request.sole,
               "Write a sole file instead: outline, layers, shank, tread, for callipers");
}

void check(const Options &options, const SheetRequest &request)
{
  if (request.rig && options.given("--part"))
    throw UsageError("--part and --rig cannot be combined: a rig is the same for heel and forefoot. Leave "
                     "out one of the two.");
  if (request.pair && (request.rig || options.given("--part")))
    throw UsageError(
      "--pair cannot be combined with --part or --rig: it writes both parts into one file. Leave "
      "out the other option.");
  if (request.sole && (request.rig || request.pair || options.given("--part")))
    throw UsageError(
      "--sole cannot be combined with --part, --pair or --rig: it writes a file about the whole "
      "sole. Leave out the other option.");
  if (const std::filesystem::path path(request.file); path.extension() != ".toml")
    throw UsageError(fmt::format("'{}': the name of a sheet must end in .toml, such as '{}.toml'.",
                                 request.file,
                                 path.stem().empty() || path.stem() == ".toml" ? "my-heel" : request.file));
}
} // namespace solemech::tools
