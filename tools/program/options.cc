// SPDX-License-Identifier: Apache-2.0
#include "tools/program/options.h"

#include "tools/language/nearest_name.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <functional>

namespace solemech::tools
{
namespace
{
/// "mm, cm or in"
std::string one_of(const std::vector<std::string> &words)
{
  std::string text = words.front();
  for (std::size_t i = 1; i < words.size(); ++i)
    text += (i + 1 < words.size() ? ", " : " or ") + words[i];
  return text;
}

void check_choice(const std::string &option, const std::string &value,
                  const std::vector<std::string> &choices)
{
  if (std::find(choices.begin(), choices.end(), value) == choices.end())
    throw UsageError(
      fmt::format("{} {}: choose {}.{}", option, value, one_of(choices), hint(value, choices)));
}

void check_setting(const std::string &setting)
{
  if (const auto equals = setting.find('='); equals == std::string::npos || equals == 0)
    throw UsageError(
      fmt::format("--set {}: expected ENTRY=VALUE, for example --set insert.thickness=\"2 mm\".", setting));
}

/// What is wrong with the number of a choice; "" when nothing is.
std::string wrong_number(const std::string &text)
{
  const auto start = text.find_first_not_of("+-");
  const bool digits = start != std::string::npos && text.size() < 6 &&
                      text.find_first_not_of("0123456789", start) == std::string::npos;
  return digits ? std::string() : fmt::format("\"{}\" is not a choice; give its number, for example 2", text);
}
} // namespace

struct Options::Parser
{
  CLI::App                           app;
  std::string                        needs;  ///< message when the names are missing
  std::string                        folder; ///< of -o
  std::vector<std::function<void()>> checks; ///< made when everything was read

  explicit Parser(const CommandText &text) : app(text.about, text.name)
  {
    app.set_help_flag("-h,--help", "Print this help");
    app.footer(text.notes);
    app.get_formatter()->column_width(26);
    app.allow_extras(); // told in words of our own
  }

  template <typename Value>
  void add_names(Value &value, const std::string &what, const std::string &about, const std::string &message)
  {
    app.add_option(what, value, about)->required(!message.empty())->type_name("");
    needs = message;
  }

  /// Refuses an option that the command does not have, with the nearest name.
  void refuse_unknown() const
  {
    const auto rest = app.remaining();
    const auto unknown = std::find_if(rest.begin(), rest.end(), [](const std::string &word) {
      return word.size() > 1 && word[0] == '-' && word != "--";
    });
    if (unknown == rest.end())
      return;
    std::vector<std::string> known;
    for (const CLI::Option *option : app.get_options())
    {
      for (const auto &name : option->get_lnames())
        known.push_back("--" + name);
      for (const auto &name : option->get_snames())
        known.push_back("-" + name);
    }
    const std::string name =
      (*unknown)[1] == '-' ? unknown->substr(0, unknown->find('=')) : unknown->substr(0, 2);
    throw UsageError(fmt::format("`{0}` has no option '{1}'.{2} `solemech help {0}` lists the options.",
                                 app.get_name(), name, hint(name, known)));
  }

  /// Refuses words that nothing took.
  void refuse_rest() const
  {
    for (const std::string &word : app.remaining())
      if (word != "--")
        throw UsageError(fmt::format("`{0}` cannot use '{1}'. `solemech help {0}` shows how to call it.",
                                     app.get_name(), word));
  }
};

Options::Options(const CommandText &text) : text_(text), parser_(std::make_unique<Parser>(text)) {}
Options::~Options() = default;

void Options::names(std::vector<std::string> &value, const std::string &what, const std::string &about,
                    const std::string &needs)
{
  parser_->add_names(value, what, about, needs);
}

void Options::name(std::string &value, const std::string &what, const std::string &about,
                   const std::string &needs)
{
  parser_->add_names(value, what, about, needs);
}

void Options::text(const std::string &option, std::string &value, const std::string &type,
                   const std::string &about)
{
  parser_->app.add_option(option, value, about)->type_name(type);
}

void Options::text(const std::string &option, std::optional<std::string> &value, const std::string &type,
                   const std::string &about)
{
  parser_->app.add_option(option, value, about)->type_name(type);
}

void Options::repeated(const std::string &option, std::vector<std::string> &value, const std::string &type,
                       const std::string &about)
{
  parser_->app.add_option(option, value, about)
    ->type_name(type)
    ->expected(1)
    ->allow_extra_args(false)
    ->take_all();
}

void Options::choice(const std::string &option, std::string &value, const std::vector<std::string> &choices,
                     const std::string &type, const std::string &about)
{
  text(option, value, type, fmt::format("{}: {} (default {})", about, one_of(choices), value));
  parser_->checks.emplace_back([option, &value, choices] { check_choice(option, value, choices); });
}

void Options::number(const std::string &option, std::optional<int> &value, const std::string &type,
                     const std::string &about)
{
  parser_->app.add_option(option, value, about)->type_name(type)->check(CLI::Validator(wrong_number, ""));
}

void Options::flag(const std::string &option, bool &value, const std::string &about)
{
  parser_->app.add_flag(option, value, about);
}

void Options::output(AnswerWish &wish, const std::string &usual)
{
  text("-o,--output", parser_->folder, "DIR", fmt::format("Folder for the results (default {})", usual));
  parser_->checks.emplace_back([this, &wish] {
    if (!given("--output"))
      return;
    if (parser_->folder.empty())
      throw UsageError("-o: the folder name is empty. Give a name, for example -o my-results.");
    wish.output = parser_->folder;
  });
}

void Options::lengths(AnswerWish &wish)
{
  choice("--lengths", wish.lengths, {"mm", "cm", "in"}, "UNIT", "Unit of printed lengths");
}

void Options::settings(std::vector<std::string> &value)
{
  repeated("--set", value, "ENTRY=VALUE",
           "Change one entry, for example insert.thickness=\"2 mm\". May be repeated");
  parser_->checks.emplace_back([&value] { std::for_each(value.begin(), value.end(), check_setting); });
}

bool Options::given(const std::string &option) const
{
  return parser_->app.count(option) > 0;
}

std::string Options::help() const
{
  return parser_->app.help("solemech");
}

bool Options::parse(std::vector<std::string> words)
{
  std::reverse(words.begin(), words.end());
  std::optional<std::string> problem;
  bool                       wants_help = false;
  try
  {
    parser_->app.parse(words);
  }
  catch (const CLI::CallForHelp &)
  {
    wants_help = true;
  }
  catch (const CLI::RequiredError &)
  {
    problem = parser_->needs;
  }
  catch (const CLI::ParseError &error)
  {
    problem = fmt::format("{}. `solemech help {}` shows how to call it.", error.what(), text_.name);
  }
  parser_->refuse_unknown(); // where there is one, it explains the other problems
  if (wants_help)
    return false;
  if (problem)
    throw UsageError(*problem);
  parser_->refuse_rest();
  for (const auto &check : parser_->checks)
    check();
  return true;
}

std::string hint(const std::string &word, const std::vector<std::string> &known)
{
  const std::string near = materials::nearest_name(word, known);
  return near.empty() ? std::string() : fmt::format(" Did you mean '{}'?", near);
}
} // namespace solemech::tools
