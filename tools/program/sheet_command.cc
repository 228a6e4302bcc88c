// SPDX-License-Identifier: Apache-2.0
// solemech sheet: writes a bench sheet, a rig file or a sole file to fill in. Never over something that is
// there: the file is created exclusively (ISO C11 7.21.5.3, mode "x"), which also refuses a link that leads
// nowhere.
#include "solver/results/result_check.h"
#include "tools/answers/sheet/blank_sheet.h"
#include "tools/answers/sheet/blank_sole.h"
#include "tools/program/commands.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <system_error>

namespace solemech::tools
{
namespace
{
namespace fs = std::filesystem;
using solver::ResultsError;

void write_new(const fs::path &path, const std::string &text)
{
  const fs::path folder = path.parent_path();
  if (!folder.empty() && !fs::is_directory(folder))
    throw ResultsError(
      fmt::format("there is no folder '{}'. Create it first, or give another folder.", folder.string()));
  std::FILE *file = std::fopen(path.c_str(), "wx");
  if (!file && errno == EEXIST)
    throw ResultsError(fmt::format(
      "'{}' exists already and was left alone. Give another name, or rename the old file.", path.string()));
  if (!file)
    throw ResultsError(fmt::format("'{}' cannot be written: {}.", path.string(), std::strerror(errno)));
  const bool whole = std::fwrite(text.data(), 1, text.size(), file) == text.size();
  if (const bool closed = std::fclose(file) == 0; whole && closed)
    return;
  std::error_code ignored;
  fs::remove(path, ignored); // ours, and only a part of it
  throw ResultsError(
    fmt::format("'{}' could not be written completely. Check disk space and permissions.", path.string()));
}

/// As a shell takes it.
std::string quoted(const std::string &name)
{
  return name.find_first_of(" '\"$&();<>|*?\\") == std::string::npos ? name : fmt::format("\"{}\"", name);
}
} // namespace

Exit write_sheet(const SheetRequest &request)
{
  const auto name = quoted(request.file);
  if (request.rig)
  {
    write_new(request.file, blank_rig());
    fmt::print("{0}: a bench with a drop weight. Every number in it is invented. Put yours in, then:\n"
               "  solemech check {1}\n"
               "  rig = \"{2}\"    in the bench sheets in the same folder\n",
               request.file, name, fs::path(request.file).filename().string());
    return Exit::ok;
  }
  if (request.sole)
  {
    write_new(request.file, blank_sole());
    fmt::print(
      "{0}: a whole sole to measure with callipers. Every number in it is invented. Put yours in, then:\n"
      "  solemech check {1}    all mistakes at once\n"
      "  solemech draw {1}     the sole to scale, with dimensions and mass\n",
      request.file, name);
    return Exit::ok;
  }
  if (request.pair)
  {
    write_new(request.file, blank_pair());
    fmt::print("{0}: heel and forefoot in one file. Every number in it is invented. Put yours in, then:\n"
               "  solemech check {1}    what is assumed where you wrote nothing\n"
               "  solemech pair {1}     both fitted together, and why they differ\n",
               request.file, name);
    return Exit::ok;
  }
  write_new(request.file, blank_sheet(request.part == "forefoot" ? Part::forefoot : Part::heel));
  fmt::print("{0}: bench sheet of a {2}. Every number in it is invented. Put yours in, then:\n"
             "  solemech check {1}    what is assumed where you wrote nothing\n"
             "  solemech run {1}      predicted beside measured, and what your readings settle\n",
             request.file, name, request.part);
  return Exit::ok;
}
} // namespace solemech::tools
