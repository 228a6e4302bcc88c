// SPDX-License-Identifier: Apache-2.0
// The only file that sees the command-line library: it takes seconds to compile.
#include "tools/program/command_line.h"

#include "tools/language/quantity.h"
#include "tools/language/shown_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <memory>

namespace solemech::tools
{
namespace
{
constexpr const char *about = R"(solemech: a virtual bench for the heel and forefoot of a shoe.
Drops a weight on a stack of foam, air unit, plate and rubber, and says how high it comes back,
how hard it hits, how far it goes in, and where the energy went.

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
  3    a calculation stopped before its end
  4    a file or folder could not be read or written
  130  interrupted from the keyboard

Results go to standard output, everything else to standard error.
Environment: SOLEMECH_DATA (folder with `cases` and `materials/library`), NO_COLOR (no bold text).
)";

constexpr const char *cases_footer = R"(Examples:
  solemech cases
  solemech cases | grep -i drop
)";

constexpr const char *book_footer = R"(Examples:
  solemech book my-bench
  solemech book my-bench --yardstick my-bench/courts.toml

Writes book.html and book.csv into the folder: its sheets with their readings, and the newest result of each
from its folder `results`. A file yardstick.toml there turns readings into points, by categories of your own:
  format = 1
  [[category]]
  name = "springy"
  reading = "rebound"
  anchors = [["200 mm", 1], ["320 mm", 10]]
)";

constexpr const char *sheet_footer = R"(Examples:
  solemech sheet my-heel.toml
  solemech sheet my-forefoot.toml --part forefoot
  solemech sheet --rig my-rod.toml

Writes a file to fill in, with remarks on what to read, with which tool, and which doubt is taken when you write
none. It can be checked as it stands, but all its numbers are invented: put yours in their place. A file that is
there already is never touched, and the folder must exist.
)";

constexpr const char *plan_footer = R"(Examples:
  solemech plan my-pair-heel.toml
  solemech plan my-pair-heel.toml --for force
  solemech plan my-pair-heel.toml > plan.txt

First the order of work: what destroys nothing, then each cut and what it ends for good. Then the readings that
could be taken next, ranked by how far each narrows the band of the rebound (or of what --for names) on the rig of
the sheet, and what is not worth doing. Runs that `solemech run` made for the sheet in this folder are used again.
)";

constexpr const char *materials_footer = R"(Examples:
  solemech materials
  solemech materials eva-soft
  solemech materials eva-soft peba-supercritical
)";

constexpr const char *check_footer = R"(Examples:
  solemech check my-pair-heel.toml
  solemech check heel-drop --set core.thickness="14 mm"
  solemech check my-pair-heel.toml my-pair-forefoot.toml && echo ready
)";

constexpr const char *run_footer = R"(Examples:
  solemech run heel-drop
  solemech run heel-drop forefoot-drop --details
  solemech run my-pair-heel.toml -o pair-07 --lengths cm
  solemech run heel-drop --set core.thickness="14 mm" --set core.material="eva-firm" --json > heel.json

A layer is addressed by its name, then the entry: core.thickness. The same inputs again are answered from
the finished run. Without -o the results go to results/<label>/<number> in the current folder; those of a run that
--set changed to results/<label>-changed/<number>.
)";

constexpr const char *learn_footer = R"(Examples:
  solemech learn
  solemech learn energy-return
  solemech learn dead-unit --guess 2

A lesson asks a question, lets you guess, runs its case and answers from the numbers of the run. Its folder,
results/learn-<lesson>/<number>, holds worksheet.html to print: blanks on the first page, answers on the second.
)";

constexpr const char *compare_footer = R"(Examples:
  solemech compare heel-drop forefoot-drop
  solemech compare my-pair-heel.toml heel-drop --details
  solemech compare results/heel-drop/1 results/heel-drop-changed/1 -o thicker-core
  solemech compare predecessor --json > predecessor.json

Says what differs, what that does to the readings, and how much of it each change makes: its share, averaged
over every order in which the changes from the first to the other can be made. Every mixture of the two that this
takes is run and kept in results/.runs: a run that was finished is never repeated, not even after a stop.
Several are each compared with the first. The same comparison again is answered from its folder,
results/compare-<first>-<other>/<number>.
)";

constexpr const char *trial_footer = R"(Examples:
  solemech trial heel-drop --swap "insert = eva-insert 3 mm"
  solemech trial heel-drop --swap "insert = pp-semirigid 2 mm + eva-soft 2 mm" --player "95 kg"
  solemech trial forefoot-drop --swap "unit = 10 mm" --range gauge_pressure="80..200 kPa"
  solemech trial my-heel.toml --range core.thickness="12..20 mm by 2 mm" --json > trial.json

A swap names a layer and what comes in its place: a material, a thickness or both; several sheets with + between
them, foot side first; or none. LAYER.ENTRY = VALUE changes one entry. A layer called insert (or footbed,
sockliner) that is not there is laid on top of the lasting board. A range goes over one entry of the changed
stack; its last name is enough where only one entry is called so.
Without -o the results go to results/trial-<label>/<number> in the current folder.
)";

constexpr const char *version_footer = R"(Examples:
  solemech --version
  solemech version --verbose
)";

constexpr const char *help_footer = R"(Examples:
  solemech help
  solemech help run
)";

/// The parsers of all commands, with places to put what they find. Each command has a parser of its own, so
/// that a case or material may be called like a command.
struct Parsers
{
  VersionRequest                         version;
  MaterialsRequest                       materials;
  CheckRequest                           check;
  RunRequest                             run;
  LearnRequest                           learn;
  CompareRequest                         compare;
  TrialRequest                           trial;
  BookRequest                            book;
  SheetRequest                           sheet;
  PlanRequest                            plan;
  std::string                            output;
  std::string                            help_topic;
  std::vector<std::unique_ptr<CLI::App>> commands;

  Parsers()
  {
    add("cases", "List the prebuilt cases by the question they answer", cases_footer);

    auto &materials_command =
      add("materials", "List the material library, or describe materials in full", materials_footer);
    materials_command.add_option("NAME", materials.names, "Materials to describe; none: the table")
      ->type_name("");

    auto &run_command = add("run", "Run cases, side by side when several are named", run_footer);
    run_command.add_option("CASE", run.cases, "Names of prebuilt cases, or case files")
      ->required()
      ->type_name("");
    run_command
      .add_option("-o,--output", output, "Folder for the results (default results/<label>/<number>)")
      ->type_name("DIR");
    add_set(run_command, run.settings);
    run_command.add_option("--lengths", run.lengths, "Unit of printed lengths: mm, cm or in (default mm)")
      ->type_name("UNIT");
    run_command.add_flag("--json", run.json, "Print the results as JSON instead of the summary");
    run_command.add_flag("--details", run.details,
                         "Print all three energy returns, energies in J and the numerical side too");
    run_command.add_flag("-q,--quiet", run.quiet, "No narration and no progress; errors still appear");

    auto &compare_command =
      add("compare", "Say why one case reads other than another: the share of each change", compare_footer);
    compare_command
      .add_option("CASE", compare.cases, "Prebuilt cases, case files, or folders of finished runs")
      ->required()
      ->type_name("");
    compare_command
      .add_option("-o,--output", output, "Folder for the results (default results/compare-<cases>/<number>)")
      ->type_name("DIR");
    compare_command.add_flag("--json", compare.json, "Print the results as JSON instead of the summary");
    compare_command.add_flag("--details", compare.details,
                             "Print all readings, decimals and what changes do together");
    compare_command.add_flag("-q,--quiet", compare.quiet, "No narration and no progress; errors still appear");

    auto &sheet_command = add("sheet", "Write a bench sheet, or a rig file, to fill in with your own numbers", sheet_footer);
    sheet_command.add_option("FILE", sheet.file, "File to write, my-heel.toml")->required()->type_name("");
    sheet_command.add_option("--part", sheet.part, "Part of the shoe: heel or forefoot (default heel)")
      ->type_name("PART");
    sheet_command.add_flag("--rig", sheet.rig, "A rig file instead: weight, height, face, guide loss, base");

    auto &check_command =
      add("check", "Check case files without running them; shows all errors at once", check_footer);
    check_command.add_option("FILE", check.files, "Case files, or names of prebuilt cases")
      ->required()
      ->type_name("");
    add_set(check_command, check.settings);

    auto &learn_command =
      add("learn", "List the lessons, or ask one: guess first, then see what the numbers say", learn_footer);
    learn_command.add_option("LESSON", learn.name, "Name of a lesson, or a case file with one; none: the list")
      ->type_name("");
    const auto is_number = [](const std::string &text) {
      const auto start = text.find_first_not_of("+-");
      const bool digits = start != std::string::npos && text.size() < 6 && text.find_first_not_of("0123456789", start) == std::string::npos;
      return digits ? std::string() : fmt::format("\"{}\" is no choice; give its number, such as 2", text);
    };
    learn_command.add_option("--guess", learn.guess, "Number of your choice, instead of typing it")
      ->type_name("NUMBER")
      ->check(CLI::Validator(is_number, ""));
    learn_command
      .add_option("-o,--output", output, "Folder for the results (default results/learn-<lesson>/<number>)")
      ->type_name("DIR");
    learn_command.add_flag("--json", learn.json, "Print the answer as JSON; asks nothing");
    learn_command.add_flag("-q,--quiet", learn.quiet, "Ask nothing, no progress; errors still appear");

    auto &book_command = add("book", "Write the index of a folder of sheets: readings, results, points", book_footer);
    book_command.add_option("DIR", book.folder, "Folder with your sheets")->required()->type_name("");
    book_command.add_option("--yardstick", book.yardstick, "File with your own categories (default DIR/yardstick.toml)")
      ->type_name("FILE");

    auto &plan_command = add("plan", "Say in which order to take a pair apart, and which reading helps most next", plan_footer);
    plan_command.add_option("SHEET", plan.sheet, "A bench sheet")->required()->type_name("");
    plan_command.add_option("--for", plan.question, "Number to narrow: rebound, force or compression (default rebound)")
      ->type_name("NUMBER");
    plan_command.add_flag("--json", plan.json, "Print the plan as JSON");
    plan_command.add_flag("-q,--quiet", plan.quiet, "No progress; errors still appear");

    auto &trial_command = add("trial", "Try a change before cutting a shoe: now, with the change, its price", trial_footer);
    trial_command.add_option("CASE", trial.name, "Name of a prebuilt case, or a case file")->required()->type_name("");
    trial_command.add_option("--swap", trial.swaps, "What comes in place of a layer; may be repeated")
      ->type_name("\"LAYER = ...\"")
      ->expected(1)
      ->allow_extra_args(false)
      ->take_all();
    trial_command.add_option("--range", trial.range, "One entry over a range: ENTRY=LOW..HIGH UNIT [by STEP]")
      ->type_name("RANGE");
    trial_command.add_option("--player", trial.player, "Body mass: does it bottom under a step?")->type_name("MASS");
    add_set(trial_command, trial.settings);
    trial_command
      .add_option("-o,--output", output, "Folder for the results (default results/trial-<label>/<number>)")
      ->type_name("DIR");
    trial_command.add_option("--lengths", trial.lengths, "Unit of printed lengths: mm, cm or in (default mm)")
      ->type_name("UNIT");
    trial_command.add_flag("--json", trial.json, "Print the results as JSON instead of the table");
    trial_command.add_flag("--details", trial.details, "Print decimals, the numerical side and the number of runs too");
    trial_command.add_flag("-q,--quiet", trial.quiet, "No narration and no progress; errors still appear");

    auto &version_command = add("version", "Print the version", version_footer);
    version_command.add_flag("-v,--verbose", version.verbose, "Add how this program was built");

    auto &help_command = add("help", "Print help on the program or on a command", help_footer);
    help_command.add_option("COMMAND", help_topic, "A command")->type_name("");
  }

  /// @throws UsageError with the nearest name
  CLI::App &find(const std::string &name) const;

private:
  CLI::App &add(const std::string &name, const std::string &description, const char *footer)
  {
    CLI::App &added = *commands.emplace_back(std::make_unique<CLI::App>(description, name));
    added.set_help_flag("-h,--help", "Print this help");
    added.footer(footer);
    added.get_formatter()->column_width(26);
    return added;
  }

  static void add_set(CLI::App &command, std::vector<std::string> &settings)
  {
    command
      .add_option("--set", settings, "Change one entry, e.g. insert.thickness=\"2 mm\"; may be repeated")
      ->type_name("ENTRY=VALUE")
      ->expected(1)
      ->allow_extra_args(false)
      ->take_all();
  }
};

std::string hint(const std::string &word, const std::vector<std::string> &known)
{
  const std::string near = materials::nearest_name(word, known);
  return near.empty() ? std::string() : fmt::format(" Did you mean '{}'?", near);
}

CLI::App &Parsers::find(const std::string &name) const
{
  std::vector<std::string> known;
  for (const auto &command : commands)
  {
    if (command->get_name() == name)
      return *command;
    known.push_back(command->get_name());
  }
  throw UsageError(
    fmt::format("there is no command '{}'.{} `solemech help` lists the commands.", name, hint(name, known)));
}

/// Refuses an unknown option of a command, with the nearest name.
void check_options(const CLI::App &command, const std::vector<std::string> &arguments)
{
  std::vector<std::string> known;
  for (const CLI::Option *option : command.get_options())
  {
    for (const auto &name : option->get_lnames())
      known.push_back("--" + name);
    for (const auto &name : option->get_snames())
      known.push_back("-" + name);
  }
  for (const std::string &argument : arguments)
  {
    if (argument == "--")
      return;
    if (argument.size() < 2 || argument[0] != '-')
      continue;
    const bool        is_long = argument[1] == '-';
    const std::string name = is_long ? argument.substr(0, argument.find('=')) : argument.substr(0, 2);
    if (std::find(known.begin(), known.end(), name) == known.end())
      throw UsageError(fmt::format("`{0}` has no option '{1}'.{2} `solemech help {0}` lists the options.",
                                   command.get_name(), name, hint(name, known)));
  }
}

/// Help of a command, or of the program when no command is named.
HelpRequest help_on(const Parsers &parsers, const std::string &topic)
{
  if (!topic.empty())
    return {parsers.find(topic).help("solemech")};
  std::string text = about;
  for (const auto &command : parsers.commands)
    text += fmt::format("  {:<11}{}\n", command->get_name(), command->get_description());
  return {text + general_notes};
}

void check_settings(const std::vector<std::string> &settings)
{
  for (const std::string &setting : settings)
    if (const auto equals = setting.find('='); equals == std::string::npos || equals == 0)
      throw UsageError(fmt::format("--set {}: expected ENTRY=VALUE, for example "
                                   "--set insert.thickness=\"2 mm\".",
                                   setting));
}

std::filesystem::path output_folder(const std::string &given)
{
  if (given.empty())
    throw UsageError("-o: the name of the folder is empty.");
  return given;
}

void check_lengths(const std::string &unit)
{
  const std::vector<std::string> units{"mm", "cm", "in"};
  if (std::find(units.begin(), units.end(), unit) == units.end())
    throw UsageError(fmt::format("--lengths {}: choose mm, cm or in.{}", unit, hint(unit, units)));
}

SheetRequest checked_sheet(const SheetRequest &request, bool has_part)
{
  const std::vector<std::string> parts{"heel", "forefoot"};
  if (std::find(parts.begin(), parts.end(), request.part) == parts.end())
    throw UsageError(fmt::format("--part {}: choose heel or forefoot.{}", request.part, hint(request.part, parts)));
  if (request.rig && has_part)
    throw UsageError("--part and --rig do not go together: a rig is the same for heel and forefoot.");
  if (const std::filesystem::path path(request.file); path.extension() != ".toml")
    throw UsageError(fmt::format("'{}': the name of a sheet ends in .toml. Write for instance '{}.toml'.", request.file,
                                 path.stem().empty() || path.stem() == ".toml" ? "my-heel" : request.file));
  return request;
}
} // namespace

Request read_command_line(const std::vector<std::string> &arguments)
{
  for (const auto &argument : arguments)
    if (materials::first_steering(argument) != std::string::npos)
      throw UsageError(fmt::format("'{}' holds a control character, which a terminal would obey. Write it without, or "
                                   "rename the file.",
                                   materials::shown_text(argument)));
  Parsers parsers;
  if (arguments.empty() || arguments.front() == "-h" || arguments.front() == "--help")
    return help_on(parsers, "");
  const std::string &name = arguments.front();
  if (name == "-V" || name == "--version")
    return VersionRequest{};
  if (name.starts_with('-'))
    throw UsageError(
      fmt::format("there is no option '{}' before a command.{} `solemech help` shows how to call "
                  "the program.",
                  name, hint(name, {"--help", "--version"})));

  CLI::App                &command = parsers.find(name);
  std::vector<std::string> rest(arguments.begin() + 1, arguments.end());
  check_options(command, rest);
  try
  {
    std::reverse(rest.begin(), rest.end());
    command.parse(rest);
  }
  catch (const CLI::CallForHelp &)
  {
    return help_on(parsers, name);
  }
  catch (const CLI::RequiredError &)
  {
    if (name == "book")
      throw UsageError("`book` needs the folder with your sheets, for example `solemech book my-bench`.");
    if (name == "sheet")
      throw UsageError("`sheet` needs the file to write, for example `solemech sheet my-heel.toml`.");
    if (name == "plan")
      throw UsageError("`plan` needs a bench sheet, for example `solemech plan my-pair-heel.toml`.");
    throw UsageError(fmt::format("`{}` needs the name of a case or a case file. `solemech cases` lists the "
                                 "prebuilt ones.",
                                 name));
  }
  catch (const CLI::ParseError &error)
  {
    throw UsageError(fmt::format("{}. `solemech help {}` shows how to call it.", error.what(), name));
  }

  if (name == "cases")
    return CasesRequest{};
  if (name == "materials")
    return parsers.materials;
  if (name == "version")
    return parsers.version;
  if (name == "check")
  {
    check_settings(parsers.check.settings);
    return parsers.check;
  }
  if (name == "learn")
  {
    if (command.count("--output") > 0)
      parsers.learn.output = output_folder(parsers.output);
    return parsers.learn;
  }
  if (name == "compare")
  {
    if (command.count("--output") > 0)
    {
      if (parsers.output.empty())
        throw UsageError("-o: the name of the folder is empty.");
      parsers.compare.output = parsers.output;
    }
    return parsers.compare;
  }
  if (name == "run")
  {
    check_settings(parsers.run.settings);
    check_lengths(parsers.run.lengths);
    if (command.count("--output") > 0)
      parsers.run.output = output_folder(parsers.output);
    return parsers.run;
  }
  if (name == "book")
    return parsers.book;
  if (name == "sheet")
    return checked_sheet(parsers.sheet, command.count("--part") > 0);
  if (name == "plan")
  {
    const std::vector<std::string> numbers{"rebound", "force", "compression"};
    if (std::find(numbers.begin(), numbers.end(), parsers.plan.question) == numbers.end())
      throw UsageError(fmt::format("--for {}: choose rebound, force or compression.{}", parsers.plan.question,
                                   hint(parsers.plan.question, numbers)));
    return parsers.plan;
  }
  if (name == "trial")
  {
    check_settings(parsers.trial.settings);
    check_lengths(parsers.trial.lengths);
    if (parsers.trial.swaps.empty() && parsers.trial.range.empty() && parsers.trial.player.empty())
      throw UsageError("`trial` needs a change: for example --swap \"insert = eva-insert 3 mm\", or a --range.");
    if (command.count("--output") > 0)
      parsers.trial.output = output_folder(parsers.output);
    return parsers.trial;
  }
  return help_on(parsers, parsers.help_topic);
}
} // namespace solemech::tools
