// SPDX-License-Identifier: Apache-2.0
// solemech learn, the part before any calculation: the list of lessons; a lesson that is asked for is checked
// and handed to the solver program, which asks the question and answers it.
#include "tools/program/commands.h"
#include "tools/program/hand_over.h"
#include "tools/program/lessons.h"
#include "tools/program/places.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>

namespace solemech::tools
{
Exit learn(const LearnRequest &request, const std::vector<std::string> &arguments)
{
  if (!request.name.empty())
  {
    lesson_input(request);
    hand_over(arguments);
  }
  const auto headings = lesson_headings();
  if (headings.empty())
    throw MissingPart(fmt::format("there are no lessons in '{}'.", case_folder().string()));
  TextTable table({Align::right, Align::left, Align::left});
  for (const CaseHeading &each : headings)
    table.add_row({std::to_string(each.lesson), each.label, each.question});
  fmt::print("{}\n{}\nTo take one (guess first, then see the answer): solemech learn {}\n",
             heading("Lessons"), table.text(2, page_width()), headings.front().label);
  return Exit::ok;
}
} // namespace solemech::tools
