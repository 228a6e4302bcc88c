// SPDX-License-Identifier: Apache-2.0
// Which choice is right follows from the numbers, and the texts with it.
#include "solver/results/result_check.h"
#include "tests/support/catch.h"
#include "tools/answers/learn/answer.h"
#include "tools/answers/learn/lesson_text.h"
#include "tools/answers/learn/measured.h"

#include "made_up_runs.h"

#include <set>

using namespace solemech;
using namespace solemech::tests;
using tools::Lesson;

TEST_CASE("the lessons: fifteen, each once in the list, each with a source")
{
  const auto    files = committed_lessons();
  std::set<int> numbers;
  for (const auto &file : files)
  {
    INFO(file.label);
    REQUIRE(file.lesson);
    numbers.insert(file.lesson->number);
    CHECK(file.group == "Learn");
    CHECK(file.lesson->choices.size() >= 3);
    CHECK(file.lesson->choices.size() <= 4);
    CHECK(file.lesson->source.size() > 10);
    CHECK((file.note.find("nvented") != std::string::npos));
    // A column of the table that no run has would stay empty.
    for (const auto &name : file.lesson->readings)
    {
      INFO(name);
      bool any = false;
      for (const auto &setup : file.cases)
        any = any || tools::rig_gives(name, solver::rig_kind(setup.rig));
      CHECK(any);
    }
  }
  CHECK(files.size() == 15);
  CHECK(numbers.size() == files.size());
  CHECK(*numbers.begin() == 1);
  CHECK(*numbers.rbegin() == 15);
}

TEST_CASE("the right choice turns when the numbers turn: every choice of every lesson can be right")
{
  for (const auto &file : committed_lessons())
  {
    INFO(file.label);
    const Lesson &lesson = *file.lesson;
    const auto    n = lesson.choices.size();
    for (std::size_t wanted = 0; wanted < n; ++wanted)
    {
      INFO("choice " << wanted + 1);
      auto runs = made_up_runs(file);
      if (lesson.rule == Lesson::Rule::limits)
      {
        const double low = wanted == 0 ? lesson.choices[0].below - 0.4 : lesson.choices[wanted - 1].below;
        const double high =
          wanted + 1 == n ? lesson.choices[n - 2].below + 0.4 : lesson.choices[wanted].below;
        set_measure(runs, *lesson.measure, 0.5 * (low + high));
      }
      else
        for (std::size_t i = 0; i < n; ++i)
          if (lesson.choices[i].measure)
          {
            const bool foremost = i == wanted || !lesson.choices[wanted].measure;
            const bool greatest = lesson.rule == Lesson::Rule::greatest;
            set_measure(runs, *lesson.choices[i].measure, foremost == greatest ? 0.8 : 0.2);
          }
      CHECK(tools::learn::right_choice(lesson, runs) == wanted);
      const auto answer = tools::learn::answer_lesson(file, runs, 0);
      CHECK(answer.right == wanted);
      CHECK(answer.because.find('{') == std::string::npos);
      CHECK((answer.verdict.find("Your guess was right") == 0) == (wanted == 0));
      CHECK(answer.explanation.size() == lesson.explanation.size());
      const auto text = tools::learn::answer_text(answer, 80);
      CHECK(text.find('{') == std::string::npos);
      CHECK(text.find(lesson.source.substr(0, 12)) != std::string::npos);
    }
  }
}

TEST_CASE("a limit itself belongs to the choice above it")
{
  const auto file = tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/energy-return.toml",
                                          committed_options());
  auto       runs = made_up_runs(file);
  set_measure(runs, *file.lesson->measure, 0.5);
  CHECK(tools::learn::right_choice(*file.lesson, runs) == 1);
  set_measure(runs, *file.lesson->measure, std::nextafter(0.5, 0.0));
  CHECK(tools::learn::right_choice(*file.lesson, runs) == 0);
}

TEST_CASE("the size of a change decides, not its sign")
{
  const auto file =
    tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/dead-unit.toml", committed_options());
  auto runs = made_up_runs(file);
  set_measure(runs, *file.lesson->choices[0].measure, -0.5);
  set_measure(runs, *file.lesson->choices[1].measure, 0.3);
  set_measure(runs, *file.lesson->choices[2].measure, 0.1);
  CHECK(tools::learn::right_choice(*file.lesson, runs) == 0);
  CHECK(tools::learn::answer_lesson(file, runs, 1).verdict.find("Your guess was 2; the numbers say 1") == 0);
}

TEST_CASE("numbers as people read them")
{
  const std::vector<tools::NamedRun> names{{"a", tools::RigKind::drop, true, {"core"}},
                                           {"b", tools::RigKind::drop, true, {"core"}}};
  const auto                         text = [&](const char *measure, double value, bool with_sign = false) {
    return tools::learn::measured_text(tools::read_measure(measure, names), value, with_sign);
  };
  CHECK(text("rebound_by_height:a", 0.6543) == "65.4 %");
  CHECK(text("rebound_by_height:a - rebound_by_height:b", -0.0161) == "1.6 points");
  CHECK(text("rebound_by_height:a - rebound_by_height:b", -0.0161, true) == "-1.6 points");
  CHECK(text("peak_force:a", 1149) == "1.15 kN");
  CHECK(text("fibre_tension:a", 1.259) == "1.26 N");
  CHECK(text("peak_force:a / peak_force:b", 1.714) == "1.71");
  CHECK(text("peak_force:a / peak_force:b - 1", 0.563, true) == "+56 %");
  CHECK(text("peak_force:a / peak_force:b - 1", -0.0132, true) == "-1.3 %");
  CHECK(text("greatest_compression:a", 0.0083) == "8.3 mm");
  CHECK(text("contact_time:a", 0.00942) == "9.4 ms");
  CHECK(text("peak_deceleration:a", 96.7) == "96.7 g");
  CHECK(text("bottoming_margin:a", 0.194) == "19 %");
  CHECK(text("bottoming_margin:a", -0.02) == "nothing");
  CHECK(tools::learn::spoken(tools::read_measure("peak_force:a / peak_force:b - 1", names)) ==
        "peak force, from b to a");
  CHECK(tools::learn::spoken(tools::read_measure("peak_force:a / peak_force:b", names)) ==
        "peak force of a divided by that of b");
}

TEST_CASE("a run without the number, or stopped early, gives no answer")
{
  const auto file =
    tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/thin-foam.toml", committed_options());
  auto runs = made_up_runs(file);
  set_reading(runs, file.lesson->measure->first, std::numeric_limits<double>::quiet_NaN());
  CHECK_THROWS_AS(tools::learn::right_choice(*file.lesson, runs), solver::ResultsError);
  runs = made_up_runs(file);
  set_reading(runs, file.lesson->measure->second, 0);
  CHECK_THROWS_AS(tools::learn::right_choice(*file.lesson, runs), solver::ResultsError);
  runs = made_up_runs(file);
  runs[1].result.complete = false;
  CHECK_THROWS_AS(tools::learn::right_choice(*file.lesson, runs), solver::ResultsError);
  runs = made_up_runs(file);
  runs[0].result.readings.clear();
  CHECK_THROWS_AS(tools::learn::right_choice(*file.lesson, runs), solver::ResultsError);
}
