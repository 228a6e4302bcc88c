// SPDX-License-Identifier: Apache-2.0
#include "tools/language/lesson.h"

#include "tools/language/fields.h"
#include "tools/language/schema.h"
#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
using materials::Dimension;
using materials::Fields;
using materials::problem_at;
using materials::Problems;

namespace
{
constexpr std::size_t fewest_choices = 2, most_choices = 6;

/// Place of `part` in the file at or after a node; the place of the node when it is not found (a text may be
/// written with escapes).
toml::source_region place_of(const std::string &part, const toml::node &node, const std::string &file_text)
{
  toml::source_region region = node.source();
  std::size_t         at = 0;
  for (toml::source_index line = 1; line < region.begin.line && at != std::string::npos; ++line)
    at = file_text.find('\n', at) == std::string::npos ? std::string::npos : file_text.find('\n', at) + 1;
  const auto found = at == std::string::npos ? at : file_text.find(part, at);
  if (found == std::string::npos)
    return region;
  for (std::size_t i = at; i < found; ++i)
    if (file_text[i] == '\n')
    {
      ++region.begin.line;
      at = i + 1;
    }
  region.begin.column = static_cast<toml::source_index>(
    1 + materials::characters(std::string_view(file_text).substr(at, found - at)));
  return region;
}

class LessonReader
{
public:
  LessonReader(const std::vector<NamedRun> &runs, const std::string &text, Problems &problems)
    : runs_(runs), text_(text), problems_(problems)
  {
  }

  Lesson read(const toml::table &block)
  {
    const Fields fields(block, "lesson", "lesson", case_entries(), problems_);
    Lesson       lesson;
    lesson.number = fields.count("number");
    lesson.close = fields.value("close");
    lesson.source = fields.text("source");
    lesson.rule = fields.given("measure")            ? Lesson::Rule::limits
                  : fields.text("winner") == "least" ? Lesson::Rule::least
                                                     : Lesson::Rule::greatest;
    if (fields.given("measure"))
      lesson.measure = measure(fields, "measure");
    lesson.readings = columns(fields);
    if (const auto *list = block.get_as<toml::array>("explanation"))
      for (const auto &element : *list)
        if (const auto *paragraph = element.as_string())
          lesson.explanation.push_back(filled_later(paragraph->get(), element, "lesson.explanation"));
    if (fields.texts("explanation").empty() && fields.given("explanation"))
      fields.problem("explanation", "there is nothing in it", "Write at least one sentence");
    const auto choices = fields.blocks("choice");
    for (const auto *each : choices)
      lesson.choices.push_back(choice(*each, lesson));
    if (choices.size() < fewest_choices || choices.size() > most_choices)
      fields.problem("choice", fmt::format("there are {} choices", choices.size()),
                     fmt::format("Give {} to {} of them, each begun with [[lesson.choice]]", fewest_choices,
                                 most_choices));
    else
      check_rule(choices, lesson);
    return lesson;
  }

private:
  std::optional<ReadingMeasure> measure(const Fields &fields, const char *name)
  {
    const auto written = fields.text(name);
    try
    {
      if (!written.empty())
        return read_measure(written, runs_);
    }
    catch (const InvalidMeasure &error)
    {
      fields.problem(name, error.what(), error.cure);
    }
    return std::nullopt;
  }

  LessonChoice choice(const toml::table &block, const Lesson &lesson)
  {
    const Fields fields(block, "lesson.choice", "lesson.choice", case_entries(), problems_);
    LessonChoice result;
    result.text = fields.text("text");
    const auto because = fields.text("because");
    if (fields.given("because"))
      result.because = filled_later(because, *block.get("because"), "lesson.choice.because");
    result.measure = measure(fields, "measure");
    if (!fields.given("below") || !lesson.measure)
      return result;
    try
    {
      result.below = materials::parse_quantity(fields.text("below"), lesson.measure->dimension);
    }
    catch (const materials::InvalidQuantity &error)
    {
      fields.problem("below", error.what(), error.cure);
    }
    return result;
  }

  std::vector<std::string> columns(const Fields &fields)
  {
    const auto names = fields.texts("readings");
    for (const auto &name : names)
      if (reading_dimension(name) == Dimension::text)
      {
        const auto near = materials::nearest_name(name, measured_readings());
        fields.problem("readings", fmt::format("there is no reading \"{}\"", name),
                       near.empty() ? fmt::format("Known: {}", fmt::join(measured_readings(), ", "))
                                    : fmt::format("Did you mean \"{}\"?", near));
      }
    return names;
  }

  /// Exactly one choice must be right, whatever the numbers.
  void check_rule(const std::vector<const toml::table *> &blocks, const Lesson &lesson)
  {
    const auto problem = [&](std::size_t i, const char *name, const char *reason, const char *cure) {
      const auto *node = blocks[i]->get(name);
      problems_.add(problem_at(node ? node->source() : blocks[i]->source(),
                               fmt::format("lesson.choice.{}", name), reason, cure));
    };
    if (lesson.rule == Lesson::Rule::limits)
    {
      for (std::size_t i = 0; i < blocks.size(); ++i)
      {
        const bool is_last = i + 1 == blocks.size();
        if (blocks[i]->contains("measure"))
          problem(i, "measure", "the lesson already has a measure", "Keep one of the two");
        if (is_last && blocks[i]->contains("below"))
          problem(i, "below", "the last choice has no limit: it covers the rest", "Remove this line");
        if (!is_last && !blocks[i]->contains("below"))
          problem(i, "below", "is missing: only the last choice has no limit",
                  "Give the value below which this choice is right");
        if (!is_last && i > 0 && lesson.choices[i].below <= lesson.choices[i - 1].below)
          problem(i, "below", "the limits do not increase from choice to choice", "Put the choices in order");
      }
      return;
    }
    std::size_t without = 0, first = blocks.size();
    for (std::size_t i = 0; i < blocks.size(); ++i)
    {
      if (blocks[i]->contains("below"))
        problem(i, "below", "limits belong to a lesson with a measure of its own",
                "Write measure = \"...\" under [lesson], or remove this line");
      if (!blocks[i]->contains("measure"))
        ++without;
      else if (first == blocks.size())
        first = i;
      else if (lesson.choices[i].measure && lesson.choices[first].measure &&
               lesson.choices[i].measure->dimension != lesson.choices[first].measure->dimension)
        problem(i, "measure", "is of another kind than the measure of the first choice",
                "Compare shares (a / b - 1) instead");
      if (without == 2 && !blocks[i]->contains("measure"))
        problem(i, "measure", "is missing: only one choice, \"about the same\", can do without",
                "Give the number that decides for this choice");
    }
    if (lesson.close > 0 && without == 0)
      problem(blocks.size() - 1, "measure", "there is no choice for sizes that lie close together",
              "Add a choice without a measure, or leave out lesson.close");
    if (lesson.close == 0 && without > 0)
      problem(blocks.size() - 1, "measure", "a choice without a measure would never be right",
              "Write close = \"2 %\" under [lesson], or give every choice a measure");
  }

  /// Cuts a text at its {places}.
  LessonText filled_later(const std::string &text, const toml::node &node, const std::string &entry)
  {
    LessonText  result;
    std::size_t begin = 0;
    const auto  problem = [&](const std::string &part, const std::string &reason, const std::string &cure) {
      problems_.add(problem_at(place_of(part, node, text_), entry, reason, cure));
    };
    for (auto open = text.find('{'); open != std::string::npos; open = text.find('{', begin))
    {
      const auto close = text.find('}', open);
      if (close == std::string::npos)
      {
        problem(text.substr(open, text.find('\n', open) - open), "a { is not closed",
                "Write { reading:run }");
        break;
      }
      const auto         whole = text.substr(open, close - open + 1);
      auto               inner = whole.substr(1, whole.size() - 2);
      LessonText::Number number;
      number.with_sign = inner.starts_with('+');
      try
      {
        number.measure = read_measure(inner.substr(number.with_sign ? 1 : 0), runs_);
      }
      catch (const InvalidMeasure &error)
      {
        problem(whole, fmt::format("{}: {}", whole, error.what()), error.cure);
      }
      result.texts.push_back(text.substr(begin, open - begin));
      result.numbers.push_back(std::move(number));
      begin = close + 1;
    }
    result.texts.push_back(text.substr(begin));
    return result;
  }

  const std::vector<NamedRun> &runs_;
  const std::string           &text_;
  Problems                    &problems_;
};
} // namespace

Lesson read_lesson(const toml::table &block, const std::vector<NamedRun> &runs, const std::string &text,
                   Problems &problems)
{
  return LessonReader(runs, text, problems).read(block);
}
} // namespace solemech::tools
