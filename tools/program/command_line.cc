// SPDX-License-Identifier: Apache-2.0
#include "tools/program/command_line.h"

#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <memory>
#include <optional>

namespace solemech::tools
{
namespace
{
constexpr const char *about = R"(solemech: a virtual bench for the heel and forefoot of a shoe.
Drops a weight on a stack of foam, air unit, plate and rubber. Shows how high it rebounds,
how hard it hits, how far it sinks in, and where the energy went.

Usage: solemech COMMAND [OPTIONS]

Commands:
)";

constexpr const char *general_notes = R"(
Options:
  -h,--help      Print this help
  -V,--version   Print the version on one line

Examples:
  solemech cases
  solemech run heel-drop forefoot-drop
  solemech run heel-drop --set core.thickness="14 mm"
  solemech compare heel-drop forefoot-drop
  solemech help run

Exit codes:
  0    answered
  1    a fault of the program
  2    the command line or a case needs a change
  3    a calculation stopped early
  4    a file or folder could not be read or written
  130  interrupted from the keyboard

Results go to standard output, everything else to standard error.
Environment: SOLEMECH_DATA (folder with `cases` and `materials/library`), NO_COLOR (no bold text).
)";

/// A command that waits for its words. Each has a parser of its own, so that a case or material may be called
/// like a command.
struct Command
{
  Options options;

  explicit Command(const CommandText &text) : options(text) {}
  virtual ~Command() = default;

  /// What was asked for; nothing when the words ask for help.
  virtual std::optional<Request> read(const std::vector<std::string> &words) = 0;
};

/// Most commands have nothing to check beyond their options.
template <typename Asked>
void check(const Options &, const Asked &)
{
}

template <typename Asked>
struct CommandFor final : Command
{
  Asked request;

  CommandFor() : Command(text_of(Asked{})) { describe(options, request); }

  std::optional<Request> read(const std::vector<std::string> &words) override
  {
    if (!options.parse(words))
      return std::nullopt;
    check(options, request);
    return request;
  }
};

using Commands = std::vector<std::unique_ptr<Command>>;

template <typename... Asked>
Commands commands_of(const std::variant<Asked...> *)
{
  Commands commands;
  (commands.push_back(std::make_unique<CommandFor<Asked>>()), ...);
  return commands;
}

/// @throws UsageError with the nearest name
Command &find(const Commands &commands, const std::string &name)
{
  std::vector<std::string> known;
  for (const auto &command : commands)
  {
    known.push_back(command->options.command().name);
    if (known.back() == name)
      return *command;
  }
  throw UsageError(
    fmt::format("there is no command '{}'.{} `solemech help` lists the commands.", name, hint(name, known)));
}

/// Help of a command, or of the program when no command is named.
HelpRequest help_on(const Commands &commands, const std::string &topic)
{
  if (!topic.empty())
    return {topic, find(commands, topic).options.help()};
  std::string text = about;
  for (const auto &command : commands)
    text += fmt::format("  {:<11}{}\n", command->options.command().name, command->options.command().about);
  return {topic, text + general_notes};
}
} // namespace

Request read_command_line(const std::vector<std::string> &arguments)
{
  for (const auto &argument : arguments)
    if (materials::first_steering(argument) != std::string::npos)
      throw UsageError(fmt::format(
        "'{}' contains a control character, which a terminal would act on. Leave it out, or rename the file.",
        materials::shown_text(argument)));
  const Commands commands = commands_of(static_cast<const Request *>(nullptr));
  if (arguments.empty() || arguments.front() == "-h" || arguments.front() == "--help")
    return help_on(commands, "");
  const std::string &name = arguments.front();
  if (name == "-V" || name == "--version")
    return VersionRequest{};
  if (name.starts_with('-'))
    throw UsageError(fmt::format(
      "there is no option '{}' before a command.{} `solemech help` shows how to call the program.", name,
      hint(name, {"--help", "--version"})));
  auto request = find(commands, name).read({arguments.begin() + 1, arguments.end()});
  if (!request)
    return help_on(commands, name);
  if (const auto *help = std::get_if<HelpRequest>(&*request))
    return help_on(commands, help->topic);
  return *request;
}
} // namespace solemech::tools
