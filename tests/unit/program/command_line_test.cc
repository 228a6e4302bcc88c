// SPDX-License-Identifier: Apache-2.0
// What the program understands of its arguments; messages word for word where they guide.
#include "tests/support/catch.h"
#include "tools/program/command_line.h"

using namespace solemech::tools;
using Catch::Matchers::Message;

TEST_CASE("a run with all its options")
{
  const auto request =
    read_command_line({"run", "heel-drop", "--set", "core.thickness=14 mm", "my.toml", "-o", "out",
                       "--lengths", "cm", "--json", "--details", "-q", "--set=mass=1 kg"});
  const auto &run = std::get<RunRequest>(request);
  CHECK(run.cases == std::vector<std::string>{"heel-drop", "my.toml"});
  CHECK(run.settings == std::vector<std::string>{"core.thickness=14 mm", "mass=1 kg"});
  CHECK(run.output == "out");
  CHECK(run.lengths == "cm");
  CHECK(run.json);
  CHECK(run.details);
  CHECK(run.quiet);
}

TEST_CASE("a case may be called like a command, and like an option after --")
{
  CHECK(std::get<RunRequest>(read_command_line({"run", "check"})).cases == std::vector<std::string>{"check"});
  CHECK(std::get<RunRequest>(read_command_line({"run", "--", "--odd"})).cases ==
        std::vector<std::string>{"--odd"});
}

TEST_CASE("help comes from every direction")
{
  const auto text = [](const std::vector<std::string> &arguments) {
    return std::get<HelpRequest>(read_command_line(arguments)).text;
  };
  CHECK(text({}) == text({"--help"}));
  CHECK(text({}) == text({"help"}));
  CHECK(text({}) == text({"-h"}));
  for (const char *command : {"cases", "materials", "run", "check", "version", "help"})
  {
    CHECK(text({}).find("\n  " + std::string(command)) != std::string::npos);
    CHECK(text({"help", command}) == text({command, "--help"}));
    CHECK(text({"help", command})
            .find("Examples:\n  solemech " +
                  std::string(command == std::string("version") ? "--version" : command)) !=
          std::string::npos);
  }
}

TEST_CASE("slips name the nearest word")
{
  const std::vector<std::pair<std::vector<std::string>, std::string>> slips{
    {{"rnu", "heel-drop"},
     "there is no command 'rnu'. Did you mean 'run'? `solemech help` lists the commands."},
    {{"xyzzy"}, "there is no command 'xyzzy'. `solemech help` lists the commands."},
    {{"help", "material"},
     "there is no command 'material'. Did you mean 'materials'? `solemech help` lists the commands."},
    {{"run", "heel-drop", "--detials"},
     "`run` has no option '--detials'. Did you mean '--details'? `solemech help run` lists the options."},
    {{"--versoin"},
     "there is no option '--versoin' before a command. Did you mean '--version'? `solemech help` shows how "
     "to call "
     "the program."},
    {{"run"}, "`run` needs the name of a case or a case file. `solemech cases` lists the prebuilt ones."},
    {{"run", "heel-drop", "--set", "thickness"},
     "--set thickness: expected ENTRY=VALUE, for example --set insert.thickness=\"2 mm\"."},
    {{"run", "heel-drop", "-o", ""}, "-o: the folder name is empty. Give a name, for example -o my-results."},
    {{"run", "heel-drop", "--lengths", "km"}, "--lengths km: choose mm, cm or in. Did you mean 'mm'?"}};
  for (const auto &[arguments, message] : slips)
    CHECK_THROWS_MATCHES(read_command_line(arguments), UsageError, Message(message));
}
