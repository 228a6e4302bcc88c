// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/pair_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <regex>
#include <sstream>
#include <vector>

namespace solemech::tools
{
namespace
{
/// A line of the file, and the heading that it may be: "[[heel.layer]]" has the words heel and layer.
struct Line
{
  std::string text, first, rest;
  std::size_t at = 0, width = 0; ///< of the first word and its dot
  bool        is_heading = false;
};

bool is_part(const std::string &word)
{
  return std::ranges::find(parts_of_pair, word) != std::end(parts_of_pair);
}

std::vector<Line> lines_of(const std::string &text)
{
  static const std::regex heading(
    R"(^(\s*\[{1,2}\s*)([A-Za-z_][\w-]*)(\s*\.\s*)?([\w.\s-]*?)\s*\]{1,2}\s*(#.*)?\r?$)");
  std::vector<Line>  lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);)
  {
    Line        read{line, "", "", 0, 0, false};
    std::smatch found;
    if (line.size() < 200 && std::regex_match(line, found, heading))
      read = {line,
              found[2],
              found[4],
              std::size_t(found.length(1)),
              std::size_t(found.length(2) + found.length(3)),
              true};
    lines.push_back(std::move(read));
  }
  return lines;
}
} // namespace

bool is_pair_file(const std::string &text)
{
  return std::ranges::any_of(lines_of(text), [](const Line &line) { return is_part(line.first); });
}

std::string sheet_of_part(const std::string &text, const std::string &part)
{
  std::string out;
  bool        is_kept = true;
  for (auto &line : lines_of(text))
  {
    if (line.is_heading)
      is_kept = line.first == part || !is_part(line.first);
    if (line.first == part)
      line.text.replace(line.at, line.width, line.width, ' ');
    out += (is_kept ? line.text : "") + "\n";
  }
  return out;
}

void check_pair_file(const std::string &text, const std::string &file, materials::Problems &problems)
{
  static constexpr std::array of_one_part{"layer", "plug", "reading", "slice"};
  problems.add_source(file, text);
  const auto lines = lines_of(text);
  const auto add = [&](std::size_t number, const std::string &reason, const std::string &cure) {
    problems.add({file, int(number + 1), int(lines[number].at + 1), lines[number].first, reason, cure});
  };
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (const auto &line = lines[i]; is_part(line.first) && line.rest.empty())
      add(i, "a part holds blocks, no entries of its own",
          fmt::format("Write [[{0}.layer]], [{0}.plug] or [[{0}.reading]]", line.first));
    else if (std::ranges::find(of_one_part, line.first) != of_one_part.end())
      add(i, "the file holds both parts of a pair, and this block does not say of which part it is",
          fmt::format("Write heel.{0} or forefoot.{0} in the brackets", line.first));
  for (const std::string part : parts_of_pair)
    if (std::ranges::none_of(lines, [&](const Line &line) {
          return line.first == part && (line.rest == "layer" || line.rest == "stack");
        }))
      problems.add({file, 0, 0, part, "has no layer", fmt::format("Add blocks [[{}.layer]]", part)});
}
} // namespace solemech::tools
