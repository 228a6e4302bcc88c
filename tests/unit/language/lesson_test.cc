// SPDX-License-Identifier: Apache-2.0
// The [lesson] block: what is read, and what a person gets to read for a slip, with its place.
#include "tests/support/catch.h"

#include "sample_sheets.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
const std::string head = "format = 1\nquestion = \"Which?\"\n[drop]\nmass = \"1.2 kg\"\nheight = \"400 mm\"\n"
                         "diameter = \"40 mm\"\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\n"
                         "thickness = \"16 mm\"\n[[series]]\nvary = \"core.thickness\"\n"
                         "values = [\"16 mm\", \"8 mm\"]\nlabels = [\"thick\", \"thin\"]\n";

const std::string start =
  "[lesson]\nnumber = 3\nsource = \"common practice, no source\"\nreadings = [\"peak_force\"]\n";

std::string limits(const std::string &measure = "peak_force:thin / peak_force:thick",
                   const std::string &because = "It is {peak_force:thin}.")
{
  return head + start + "measure = \"" + measure + "\"\nexplanation = [\"From {peak_force:thick} on.\"]\n" +
         "[[lesson.choice]]\ntext = \"less\"\nbelow = \"1.5\"\nbecause = \"" + because + "\"\n" +
         "[[lesson.choice]]\ntext = \"more\"\nbecause = \"So it is.\"\n";
}

std::string winner(const std::string &settings, const std::string &last_measure = "")
{
  return head + start + settings + "explanation = [\"So.\"]\n" +
         "[[lesson.choice]]\ntext = \"force\"\nmeasure = \"peak_force:thin / peak_force:thick - 1\"\n" +
         "because = \"So.\"\n[[lesson.choice]]\ntext = \"time\"\n" +
         "measure = \"contact_time:thin / contact_time:thick - 1\"\nbecause = \"So.\"\n" +
         "[[lesson.choice]]\ntext = \"alike\"\n" + last_measure + "because = \"So.\"\n";
}

/// First line of the first problem.
std::string slip(const std::string &text)
{
  const auto all = problems_of(text);
  return all.substr(0, all.find('\n'));
}
} // namespace

TEST_CASE("a lesson with limits")
{
  const auto file = tools::read_case_text(limits(), "my.toml", small_library());
  REQUIRE(file.lesson);
  const auto &lesson = *file.lesson;
  CHECK(lesson.number == 3);
  CHECK(lesson.rule == tools::Lesson::Rule::limits);
  CHECK(lesson.measure->kind == tools::MeasureKind::ratio);
  CHECK(lesson.measure->first.run == 1);
  CHECK(lesson.measure->second.run == 0);
  REQUIRE(lesson.choices.size() == 2);
  CHECK(lesson.choices[0].below == 1.5);
  CHECK(lesson.choices[1].below == std::numeric_limits<double>::infinity());
  CHECK(lesson.choices[0].because.texts == std::vector<std::string>{"It is ", "."});
  CHECK(lesson.choices[0].because.numbers[0].measure.first.dimension == materials::Dimension::force);
}

TEST_CASE("a lesson in which the greatest or least size wins")
{
  const auto file = tools::read_case_text(winner("close = \"2 %\"\n"), "my.toml", small_library());
  REQUIRE(file.lesson);
  CHECK(file.lesson->rule == tools::Lesson::Rule::greatest);
  CHECK(file.lesson->close == 0.02);
  CHECK(file.lesson->choices[0].measure->kind == tools::MeasureKind::change);
  CHECK(file.lesson->choices[0].measure->dimension == materials::Dimension::share);
  CHECK(!file.lesson->choices[2].measure);
  const auto least =
    tools::read_case_text(winner("winner = \"least\"\nclose = \"2 %\"\n"), "my.toml", small_library());
  CHECK(least.lesson->rule == tools::Lesson::Rule::least);
}

TEST_CASE("places of numbers are checked where they stand")
{
  CHECK(problems_of(limits("peak_force:thin / peak_force:thick", "Ä: {paek_force:thin} N")) ==
        "my.toml:24:15: lesson.choice.because: {paek_force:thin}: there is no reading \"paek_force\". Did "
        "you mean "
        "\"peak_force\"?\n"
        "    because = \"Ä: {paek_force:thin} N\"\n"
        "                  ^\n");
  CHECK(slip(limits("peak_force:thin / peak_force:thick", "{peak_force:thni}")) ==
        "my.toml:24:12: lesson.choice.because: {peak_force:thni}: there is no run \"thni\". Did you mean "
        "\"thin\"?");
  CHECK(slip(limits("peak_force:thin / peak_force:thick", "{peak_force}")) ==
        "my.toml:24:12: lesson.choice.because: {peak_force}: does not name its run. Write the "
        "reading, a "
        "colon and one of thick, thin.");
  CHECK(slip(limits("peak_force:thin / peak_force:thick", "{peak_force:thin")) ==
        "my.toml:24:12: lesson.choice.because: a { is not closed. Write { reading:run }.");
  // In a text of several lines the place is that of the braces.
  auto       text = limits();
  const auto at = text.find("\"It is {peak_force:thin}.\"");
  text.replace(at, 26, "\"\"\"one\n  two {contact_tiem:thin}\"\"\"");
  CHECK(slip(text) == "my.toml:25:7: lesson.choice.because: {contact_tiem:thin}: there is no reading "
                      "\"contact_tiem\". Did you mean \"contact_time\"?");
}

TEST_CASE("measures that cannot be taken")
{
  CHECK(slip(limits("peak_force:thin/peak_force:thick")).find("there is no run \"thin/peak_force:thick\"") !=
        std::string::npos);
  CHECK(slip(limits("peak_force:thin - contact_time:thick")) ==
        "my.toml:19:11: lesson.measure: peak_force:thin and contact_time:thick are of different kinds. "
        "Compare readings of the same kind.");
  CHECK(slip(limits("loop_return:thin - loop_return:thick")).find("a drop does not give loop_return") !=
        std::string::npos);
  CHECK(slip(limits("lost_in.cor:thin - lost_in.core:thick")) ==
        "my.toml:19:11: lesson.measure: the stack of this run has no layer \"cor\". Did you mean \"core\"?");
  CHECK(slip(limits("fibre_tension:thin - fibre_tension:thick")).find("has no air unit") !=
        std::string::npos);
  CHECK(slip(limits("peak_force:thin ^ peak_force:thick")).find("is not a measure") != std::string::npos);
}

TEST_CASE("a rule leaves exactly one choice for any numbers, or is refused")
{
  auto text = limits();
  text.replace(text.find("below = \"1.5\"\n"), 14, "");
  CHECK(slip(text) == "my.toml:21:1: lesson.choice.below: is missing: only the last choice has no limit. "
                      "Give the value below which this choice is right.");
  CHECK(slip(limits() + "below = \"2\"\n").find("the last choice has no limit") != std::string::npos);
  CHECK(slip(limits() + "[[lesson.choice]]\ntext = \"most\"\nbecause = \"So.\"\n")
          .find("is missing: only the last") != std::string::npos);
  text = limits();
  text.insert(text.find("[[lesson.choice]]\ntext = \"more\""),
              "[[lesson.choice]]\ntext = \"some\"\nbelow = \"1.2\"\nbecause = \"So.\"\n");
  CHECK(slip(text).find("the limits do not increase") != std::string::npos);

  CHECK(slip(winner("")).find("a choice without a measure would never be right") != std::string::npos);
  CHECK(slip(winner("close = \"2 %\"\n", "measure = \"peak_force:thin / peak_force:thick - 1\"\n"))
          .find("there is no choice for sizes that lie close together") != std::string::npos);
  CHECK(slip(winner("", "measure = \"peak_force:thin\"\n")).find("is of another kind") != std::string::npos);
}

TEST_CASE("a lesson needs a question and choices")
{
  auto text = limits();
  text.replace(text.find("question = \"Which?\"\n"), 20, "");
  CHECK(slip(text).find("question: is missing: a lesson needs a question") != std::string::npos);
  text = limits();
  text.resize(text.find("[[lesson.choice]]\ntext = \"more\""));
  CHECK(problems_of(text).find("there are 1 choices. Give 2 to 6 of them") != std::string::npos);
}

TEST_CASE("changes from the command line may change the runs: the lesson is left out")
{
  auto options = small_library();
  options.overrides = {"core.thickness=12 mm"};
  const auto file = tools::read_case_text(limits(), "my.toml", options);
  CHECK(file.cases.size() == 1);
  CHECK(!file.lesson);
}
