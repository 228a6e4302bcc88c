// SPDX-License-Identifier: Apache-2.0
#include "tools/language/problem.h"

#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace solemech::materials
{
namespace
{
/// More than anybody mends before trying again, and few enough to look through for each new one.
constexpr std::size_t most_listed = 200;

std::string line_of(const std::string &text, int line)
{
  std::size_t begin = 0;
  for (int n = 1; n < line; ++n)
  {
    begin = text.find('\n', begin);
    if (begin == std::string::npos)
      return {};
    ++begin;
  }
  return text.substr(begin, std::min(text.find_first_of("\r\n", begin), text.size()) - begin);
}

/// The line as it may be shown on a terminal: control characters become '?', a long line is cut.
std::string showable(std::string line)
{
  std::replace(line.begin(), line.end(), '\t', ' ');
  line = shown_text(line);
  constexpr std::size_t longest = 160;
  if (line.size() > longest)
    line = line.substr(0, valid_utf8(std::string_view(line).substr(0, longest))) + " ...";
  return line;
}
/// Files in the order of their first problem, then by line and column.
std::vector<Problem> in_source_order(std::vector<Problem> problems)
{
  std::vector<std::string> files;
  for (const auto &problem : problems)
    if (std::find(files.begin(), files.end(), problem.file) == files.end())
      files.push_back(problem.file);
  const auto place = [&](const Problem &problem) {
    return std::tuple(std::find(files.begin(), files.end(), problem.file), problem.line, problem.column);
  };
  std::stable_sort(problems.begin(), problems.end(),
                   [&](const Problem &a, const Problem &b) { return place(a) < place(b); });
  return problems;
}
} // namespace

std::string problem_text(const Problem &problem)
{
  std::string text = problem.file;
  if (problem.line > 0)
    text += fmt::format(":{}:{}", problem.line, problem.column);
  text += ": ";
  if (!problem.entry.empty())
    text += problem.entry + ": ";
  text += problem.reason;
  if (!problem.cure.empty())
  {
    text += ". " + problem.cure;
    if (text.back() != '?' && text.back() != '.')
      text += '.';
  }
  return shown_text(text);
}

void Problems::add(Problem problem)
{
  // The first message about an entry at a place is the one to mend; the looking-through of the text gives
  // bare names.
  for (const auto &known : list_)
    if (known.file == problem.file && known.line == problem.line && known.column == problem.column &&
        (problem.line > 0
           ? problem.entry.ends_with(known.entry) && (!known.entry.empty() || problem.entry.empty())
           : known.entry == problem.entry && known.reason == problem.reason))
      return;
  ++n_noted_;
  if (list_.size() < most_listed)
    list_.push_back(std::move(problem));
}

bool Problems::has_line(const std::string &file, int line) const
{
  return std::any_of(list_.begin(), list_.end(),
                     [&](const Problem &p) { return p.line == line && p.file == file; });
}

std::string Problems::text() const
{
  std::string text;
  for (const auto &problem : in_source_order(list_))
  {
    text += problem_text(problem) + '\n';
    const auto source = sources_.find(problem.file);
    if (problem.line < 1 || source == sources_.end())
      continue;
    const auto line = showable(line_of(source->second, problem.line));
    if (line.empty() || problem.column > 160)
      continue;
    text += "    " + line + "\n    " +
            std::string(static_cast<std::size_t>(std::max(problem.column, 1) - 1), ' ') + "^\n";
  }
  if (list_.size() >= most_listed)
    text += fmt::format("Only the first {} mistakes are listed: correct these first.\n", most_listed);
  return text;
}

void Problems::throw_if_any() const
{
  if (!list_.empty())
    throw CaseError(in_source_order(list_), text());
}
} // namespace solemech::materials
