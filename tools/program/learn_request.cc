// SPDX-License-Identifier: Apache-2.0
#include "tools/program/learn_request.h"

namespace solemech::tools
{
CommandText text_of(const LearnRequest &)
{
  return {"learn", "List the lessons, or take one: guess first, then see what the numbers say", R"(Examples:
  solemech learn
  solemech learn energy-return
  solemech learn dead-unit --guess 2

A lesson asks a question and lets you guess. Then it runs its case and answers from the numbers. Its folder,
results/learn-<lesson>/<number>, holds worksheet.html to print: blanks on the first page, answers on the second.
)"};
}

void describe(Options &options, LearnRequest &request)
{
  options.name(request.name, "LESSON",
               "Name of a lesson, or of a case file with a lesson. Without a name: the list");
  options.number("--guess", request.guess, "NUMBER", "Number of your choice, so that nothing is asked");
  options.output(request, "results/learn-<lesson>/<number>");
  options.flag("--json", request.json, "Print the answer as JSON, without asking");
  options.flag("-q,--quiet", request.quiet, "Ask nothing and show no progress bar; errors still appear");
}
} // namespace solemech::tools
