// SPDX-License-Identifier: Apache-2.0
#include "materials/sheet.h"

#include "materials/sheet_scanner.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

namespace solemech::materials
{
namespace
{
/// The parser's own words, turned to what the person can do.
std::pair<std::string, std::string> friendly(std::string_view description)
{
  const auto  has = [&](std::string_view part) { return description.find(part) != std::string_view::npos; };
  std::string reason(description);
  if (const auto at = reason.find(": "); at != std::string::npos && reason.starts_with("Error while parsing"))
    reason = reason.substr(at + 2);
  if (has("redefine") || has("duplicate"))
    return {reason,
            "Give each entry once; further layers and materials start with [[layer]] and [[material]]"};
  if (has("table header") || has("table"))
    return {reason, "Headers are written [name] or [[name]]"};
  return {reason, "Entries are written name = \"value unit\""};
}
} // namespace

std::string read_sheet_text(const std::filesystem::path &path, Problems &problems)
{
  const auto      name = path.string();
  std::error_code error;
  const auto      status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status))
  {
    problems.add({name, 0, 0, "", "there is no such file", "Check the name and the folder"});
    return {};
  }
  if (!std::filesystem::is_regular_file(status))
  {
    problems.add({name, 0, 0, "", "this is not a file", "Give a text file such as my-pair.toml"});
    return {};
  }
  const auto size = std::filesystem::file_size(path, error);
  if (!error && size > largest_sheet)
  {
    problems.add({name, 0, 0, "",
                  fmt::format("{:.1f} MB is too large for a sheet", static_cast<double>(size) / 1e6),
                  "A sheet has at most 1 MB; is this the right file?"});
    return {};
  }
  std::ifstream      stream(path, std::ios::binary);
  std::ostringstream text;
  if (stream && size > 0)
    text << stream.rdbuf();
  if (!stream)
  {
    problems.add(
      {name, 0, 0, "", fmt::format("cannot be read: {}", std::strerror(errno)), "Check its permissions"});
    return {};
  }
  return text.str();
}

std::vector<std::filesystem::path> sheet_files(const std::filesystem::path &folder)
{
  std::vector<std::filesystem::path> files;
  for (const auto &entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".toml")
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

toml::table parse_sheet(const std::string &text, const std::string &file, Problems &problems)
{
  if (text.size() > largest_sheet)
  {
    problems.add({file, 0, 0, "",
                  fmt::format("{:.1f} MB is too large for a sheet", static_cast<double>(text.size()) / 1e6),
                  "A sheet has at most 1 MB; is this the right file?"});
    return {};
  }
  std::string_view body = text;
  if (body.starts_with("\xef\xbb\xbf"))
    body.remove_prefix(3);
  const auto before = problems.list().size();
  bool       broken_bytes = false;
  const auto mended = mended_sheet(body, file, problems, broken_bytes);
  // Lines are shown as written; where bytes are broken, as mended.
  problems.add_source(file, broken_bytes ? mended : mended.empty() ? std::string() : std::string(body));
  if (mended.empty() && problems.list().size() > before)
    return {};
  toml::table table;
  try
  {
    table = toml::parse(mended, file);
  }
  catch (const toml::parse_error &error)
  {
    const auto begin = error.source().begin;
    if (!problems.has_line(file, static_cast<int>(begin.line)))
    {
      const auto [reason, cure] = friendly(error.description());
      problems.add({file, static_cast<int>(begin.line), static_cast<int>(begin.column), "", reason, cure});
    }
    return {};
  }
  const auto *format = table.get("format");
  if (!format)
    problems.add({file, 1, 1, "format", "is missing", "Begin the file with the line: format = 1"});
  else if (!format->is_integer() || format->as_integer()->get() != 1)
  {
    problems.add({file, static_cast<int>(format->source().begin.line),
                  static_cast<int>(format->source().begin.column), "format",
                  "this program reads format 1 only", "Write format = 1, or use a newer program"});
    return {};
  }
  return table;
}
} // namespace solemech::materials
