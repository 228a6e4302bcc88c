// SPDX-License-Identifier: Apache-2.0
#include "tools/program/lessons.h"

#include "tools/language/nearest_name.h"
#include "tools/program/places.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// A name that is no lesson: a case without one, or unknown.
[[noreturn]] void refuse(const std::string &name)
{
  std::vector<std::string> lessons;
  for (const auto &heading : case_headings({case_folder()}))
    if (heading.lesson > 0)
      lessons.push_back(heading.label);
    else if (heading.label == name)
      throw UsageError(
        fmt::format("'{0}' is a case without a lesson. Run it: solemech run {0}. `solemech learn` "
                    "lists the lessons.",
                    name));
  const auto near = materials::nearest_name(name, lessons);
  throw UsageError(fmt::format("there is no lesson '{}'.{} `solemech learn` lists the lessons.", name,
                               near.empty() ? "" : fmt::format(" Did you mean '{}'?", near)));
}
} // namespace

std::vector<CaseHeading> lesson_headings()
{
  auto headings = case_headings({case_folder()});
  std::erase_if(headings, [](const CaseHeading &heading) { return heading.lesson <= 0; });
  std::stable_sort(headings.begin(), headings.end(),
                   [](const auto &a, const auto &b) { return a.lesson < b.lesson; });
  return headings;
}

Input lesson_input(const LearnRequest &request)
{
  const std::filesystem::path given(request.name);
  const bool                  is_file = given.extension() == ".toml" || given.has_parent_path();
  const auto                  known = is_file ? std::vector<CaseHeading>() : lesson_headings();
  if (!is_file && std::none_of(known.begin(), known.end(),
                               [&](const CaseHeading &heading) { return heading.label == request.name; }))
    refuse(request.name);
  Input input = read_inputs({request.name}, {}).front();
  if (!input.file.lesson)
    throw UsageError(fmt::format(
      "'{}' has no lesson: it contains no [lesson] block. cases/REFERENCE.md lists what a lesson needs.",
      request.name));
  const auto n_choices = static_cast<int>(input.file.lesson->choices.size());
  if (request.guess && (*request.guess < 1 || *request.guess > n_choices))
    throw UsageError(fmt::format("--guess {}: '{}' has {} choices; give a number from 1 to {}.",
                                 *request.guess, request.name, n_choices, n_choices));
  return input;
}
} // namespace solemech::tools
