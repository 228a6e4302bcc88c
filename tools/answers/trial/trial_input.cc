// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/trial_input.h"

#include "tools/language/case_errors.h"
#include "tools/language/case_text.h"
#include "tools/language/quantity.h"
#include "tools/language/swap_option.h"

#include <fmt/format.h>

#include <charconv>

namespace solemech::tools
{
using materials::CaseError;
using materials::Problems;

namespace
{
constexpr double lightest_player = 20, heaviest_player = 250; // [kg]

std::optional<double> player_mass(const std::string &text)
{
  if (text.empty())
    return std::nullopt;
  const auto slip = [&](const std::string &reason, const std::string &cure) {
    Problems problems;
    problems.add_source("--player", text);
    problems.add({"--player", 1, 1, "", reason, cure});
    problems.throw_if_any();
  };
  double mass = 0;
  try
  {
    mass = materials::parse_quantity(text, materials::Dimension::mass);
  }
  catch (const materials::InvalidQuantity &error)
  {
    slip(error.what(), error.cure);
  }
  if (!(mass >= lightest_player && mass <= heaviest_player))
    slip(fmt::format("a body mass of {} is outside the range of {:.0f} kg to {:.0f} kg", text,
                     lightest_player, heaviest_player),
         "Give the body mass, such as --player \"95 kg\"");
  return mass;
}

/// The one case of a file. A file with series holds several, and a trial changes one.
solver::Case only_case(const CaseFile &file, const std::filesystem::path &path)
{
  if (file.series.empty())
    return file.cases.front();
  std::string settings;
  for (const auto &varied : file.series)
    settings += fmt::format(" --set {}=\"{}\"", varied.address, varied.values.front());
  Problems problems;
  problems.add({path.string(), 0, 0, "series",
                fmt::format("the file holds {} cases, but a trial needs a single one", file.cases.size()),
                "Pick one, for example with" + settings});
  problems.throw_if_any();
  return {};
}

TrialRange range_of(CaseFile file)
{
  TrialRange range;
  range.address = file.series.back().address;
  for (const auto &text : file.series.back().values)
  {
    double     value = 0;
    const auto rest = std::from_chars(text.data(), text.data() + text.size(), value).ptr;
    range.values.push_back(value);
    range.unit.assign(rest, text.data() + text.size());
  }
  range.unit.erase(0, range.unit.find_first_not_of(' '));
  range.cases = std::move(file.cases);
  return range;
}

std::string with_comments(std::string text, const TrialRequest &request, const CaseFile &file)
{
  if (!text.ends_with('\n'))
    text += '\n';
  for (const auto &change : file.changes)
    text += fmt::format("# changed: {}\n", change);
  for (const auto &swap : request.swaps)
    text += fmt::format("# trial: {}\n", swap_text(swap));
  if (!request.range.empty())
    text += fmt::format("# range: {}\n", swap_text(request.range));
  if (!request.player.empty())
    text += fmt::format("# player: {}\n", swap_text(request.player));
  return text;
}
} // namespace

TrialInput read_trial(const TrialRequest &request, const std::filesystem::path &path,
                      const ReadOptions &given)
{
  ReadOptions options = given;
  options.overrides = request.settings;
  options.swaps.clear();
  options.range.clear();

  const auto read = [&] {
    return request.text.empty() ? read_case_file(path, options)
                                : read_case_text(request.text, path.string(), options);
  };
  materials::CaseErrors errors;
  const auto            collecting = [&](const auto &step) {
    try
    {
      step();
    }
    catch (const CaseError &error)
    {
      errors.add(error);
    }
  };

  TrialInput trial;
  collecting([&] {
    const CaseFile file = read();
    trial.path = request.sheet.empty() ? path : request.sheet;
    trial.label = request.label.empty() ? file.label : request.label;
    trial.now = only_case(file, path);
    trial.settings = file.changes;
    trial.sheets = file.sheets;
    trial.case_text = with_comments(file.text, request, file);
  });
  collecting([&] { trial.player_mass = player_mass(request.player); });
  if (trial.label.empty() ||
      trial.now.layers.empty()) // no stack to change: only the form of the rest is told
  {
    Problems problems;
    read_swaps(request.swaps, problems);
    if (!request.range.empty())
      read_range(request.range, problems);
    collecting([&] { problems.throw_if_any(); });
    errors.throw_if_any();
  }
  options.swaps = request.swaps;
  options.range = request.range;
  collecting([&] {
    CaseFile file = read();
    if (!request.range.empty())
    {
      trial.range = range_of(std::move(file));
      options.range.clear();
      file = read();
    }
    trial.changed = file.cases.front();
  });
  errors.throw_if_any();
  for (const auto &swap : request.swaps)
    trial.swaps.push_back(swap_text(swap));
  return trial;
}

std::string asked_text(const TrialInput &trial, std::string (*text_of)(const solver::Case &))
{
  std::string text = "# before\n" + text_of(trial.now) + "# after\n" + text_of(trial.changed);
  for (const auto &told : trial.settings)
    text += "# changed: " + told + "\n";
  for (const auto &told : trial.swaps)
    text += "# trial: " + told + "\n";
  if (trial.range)
  {
    text += fmt::format("# range of {} in {}\n", trial.range->address, trial.range->unit);
    for (std::size_t i = 0; i < trial.range->cases.size(); ++i)
      text += fmt::format("# at {:.17g}\n", trial.range->values[i]) + text_of(trial.range->cases[i]);
  }
  if (trial.player_mass)
    text += fmt::format("# player = {:.17g}\n", *trial.player_mass);
  return text;
}
} // namespace solemech::tools
