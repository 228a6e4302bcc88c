// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sheet.h"

#include "tools/language/fields.h"
#include "tools/language/file_text.h"
#include "tools/language/sheet_scanner.h"
#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>

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
            "Give each entry once. Start further layers and materials with [[layer]] and [[material]]"};
  if (has("table header") || has("table"))
    return {reason, "Headers are written [name] or [[name]]"};
  return {reason, "Entries are written name = \"value unit\""};
}

/// Escapes such as \u001b come out of the parser as what they stand for.
void refuse_steering(const toml::node &node, const std::string &entry, Problems &problems);

void refuse_steering(const toml::table &table, Problems &problems)
{
  for (const auto &[key, node] : table)
  {
    const std::string name(key.str());
    if (first_steering(name) != std::string::npos)
      problems.add(problem_at(key.source(), "", "a name contains a control character", "Write a plain name"));
    refuse_steering(node, name, problems);
  }
}

void refuse_steering(const toml::node &node, const std::string &entry, Problems &problems)
{
  if (const auto *text = node.as_string(); text && first_steering(text->get(), true) != std::string::npos)
    problems.add(problem_at(node.source(), entry,
                            "contains a control character, which a terminal would act on",
                            "Write plain text"));
  if (const auto *list = node.as_array())
    for (const auto &element : *list)
      refuse_steering(element, entry, problems);
  if (const auto *table = node.as_table())
    refuse_steering(*table, problems);
}
} // namespace

std::string read_sheet_text(const std::filesystem::path &path, Problems &problems)
{
  auto read = file_text(path, largest_sheet);
  if (read.state == FileText::State::read && read.text.empty())
    read.reason = "the file is empty", read.cure = "Write the sheet in it, beginning with format = 1";
  if (!read.reason.empty())
    problems.add({path.string(), 0, 0, "", read.reason, read.cure});
  return std::move(read.text);
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
                  fmt::format("{:.1f} MB is too large", static_cast<double>(text.size()) / 1e6),
                  "At most 1 MB is allowed; is this the right file?"});
    return {};
  }
  std::string_view body = text;
  if (body.starts_with("\xef\xbb\xbf"))
    body.remove_prefix(3);
  const auto before = problems.n_noted();
  bool       broken_bytes = false;
  const auto mended = mended_sheet(body, file, problems, broken_bytes);
  // Lines are shown as written; where bytes are broken, as mended.
  problems.add_source(file, broken_bytes ? mended : mended.empty() ? std::string() : std::string(body));
  if (mended.empty() && problems.n_noted() > before)
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
  refuse_steering(table, problems);
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
