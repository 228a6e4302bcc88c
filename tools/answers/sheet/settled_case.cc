// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/settled_case.h"

#include "tools/answers/sheet/sheet_text.h"
#include "tools/language/case_tree.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/doubted_case.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/output/results/block_json.h"
#include "tools/output/results/cautions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <variant>

namespace solemech::tools
{
using namespace materials;

namespace
{
std::string relaxing_text(const std::vector<RelaxingTerm> &terms)
{
  std::string text;
  for (const auto &term : terms)
    text += fmt::format("  {{ share = {:.9g}, time = \"{:.9g} s\" }},\n", term.share, term.relaxation_time);
  return terms.empty() ? "" : "relaxing = [\n" + text + "]\n";
}

std::string slipping_text(const std::vector<SlippingTerm> &terms)
{
  std::string text;
  for (const auto &term : terms)
    text += fmt::format("  {{ share = {:.9g}, cap = {:.9g} }},\n", term.share, term.cap);
  return terms.empty() ? "" : "slipping = [\n" + text + "]\n";
}

std::string network_text(const std::vector<NetworkTerm> &terms)
{
  if (terms.size() == 1)
    return fmt::format("shear_modulus = \"{:.9g} Pa\"\n", terms.front().shear_modulus);
  std::string text;
  for (const auto &term : terms)
    text +=
      fmt::format("  {{ shear_modulus = \"{:.9g} Pa\", exponent = {:.9g}, volumetric_exponent = {:.9g} }},\n",
                  term.shear_modulus, term.exponent, term.volumetric_exponent);
  return "network = [\n" + text + "]\n";
}

std::string numbers_text(const Material &material)
{
  auto text = fmt::format("density = \"{:.9g} kg/m3\"\n", material.density);
  if (const auto *foam = std::get_if<FoamData>(&material.data))
    text += fmt::format("relative_density = {:.9g}\ndensification_modulus = \"{:.9g} Pa\"\n",
                        foam->relative_density, foam->densification_modulus) +
            network_text(foam->network) + relaxing_text(foam->relaxing) + slipping_text(foam->slipping);
  if (const auto *rubber = std::get_if<RubberData>(&material.data))
    text +=
      fmt::format("c10 = \"{:.9g} Pa\"\nc20 = \"{:.9g} Pa\"\nc30 = \"{:.9g} Pa\"\nc01 = \"{:.9g} Pa\"\n",
                  rubber->c10, rubber->c20, rubber->c30, rubber->c01) +
      relaxing_text(rubber->relaxing);
  return text;
}

Json band_json(const settle::Band &band)
{
  return {{"value", band.value}, {"low", band.low}, {"high", band.high}};
}
} // namespace

namespace
{
/// Without what only the sheet knew: lines that lost all but their comment, blanks at ends, runs of empty
/// lines.
std::string tidied(const std::string &text, const std::string &sheet_text)
{
  std::istringstream lines(text), written(sheet_text);
  std::string        line, before, out;
  while (std::getline(lines, line))
  {
    if (!std::getline(written, before))
      before = line;
    line.resize(line.find_last_not_of(" \t\r") + 1);
    const auto first = line.find_first_not_of(" \t");
    const bool lost_its_entry = before != line && first != std::string::npos && line[first] == '#' &&
                                before.find_first_not_of(" \t") != std::string::npos &&
                                before[before.find_first_not_of(" \t")] != '#';
    if (lost_its_entry || (line.empty() && (out.empty() || out.ends_with("\n\n"))))
      continue;
    out += line + "\n";
  }
  while (out.ends_with("\n\n"))
    out.pop_back();
  return out;
}
} // namespace

namespace
{
/// The text without blocks and entries of these names.
std::string without(const std::string &text, const std::vector<std::string> &names)
{
  materials::Problems told_before;
  SheetText           rest(text);
  const auto          tree = materials::parse_sheet(text, "", told_before);
  for (const auto &name : names)
    if (const auto found = tree.find(name); found != tree.end())
      rest.remove_block(found->first, found->second);
  return rest.text();
}

/// The text without the blocks of unknown materials: below stand ones with numbers.
std::string without_unknown(const std::string &text, const Sheet &sheet)
{
  materials::Problems told_before;
  SheetText           rest(text);
  const auto          tree = materials::parse_sheet(text, "", told_before);
  if (const auto *blocks = tree.get_as<toml::array>("material"))
    for (const auto &block : *blocks)
      if (const auto *table = block.as_table())
        if (std::ranges::any_of(sheet.materials, [&](const UnknownMaterial &unknown) {
              return unknown.name == (*table)["name"].value_or(std::string());
            }))
          rest.remove_table(*table);
  return rest.text();
}

/// What stands below in full, so that the text needs no file beside it: the rig, and a stack that the sheet
/// only names or changes.
std::vector<std::string> named_elsewhere(const Sheet &sheet)
{
  auto names = sections_of({BlockOf::bench, BlockOf::slide, BlockOf::surroundings});
  names.emplace_back("rig");
  if (!sheet.stack_text.empty())
  {
    const auto of_stack = sections_of({BlockOf::stack});
    names.insert(names.end(), of_stack.begin(), of_stack.end());
    names.insert(names.end(), {"stack", "change"});
  }
  return names;
}
} // namespace

std::vector<solver::Doubt> settled_doubts(const Sheet &sheet, const settle::Settled &settled)
{
  std::vector<solver::Doubt> doubts;
  std::vector<std::size_t>   told;
  for (const bool of_rig : {false, true}) // those of the rig last: with another rig they are cut off
    for (std::size_t i = 0; i < sheet.unknowns.size(); ++i)
    {
      const auto &unknown = sheet.unknowns[i];
      // Two sheets read on one rod are known by its numbers, whether they show or not.
      if (is_of_rig(unknown.kind) != of_rig ||
          (!of_rig && unknown.parameter.minor && !settle::shows(settled, i, least_share_of_variance)))
        continue;
      solver::Doubt doubt{
        unknown.kind, unknown.target, std::sqrt(std::max(0.0, settled.covariance[i][i])), {}};
      for (const std::size_t j : told)
        doubt.together.push_back(settled.correlation[i][j]);
      doubts.push_back(std::move(doubt));
      told.push_back(i);
    }
  return doubts;
}

std::string settled_case_text(const Sheet &sheet, const SettledSheet &answer)
{
  auto text = tidied(without(without_unknown(sheet.case_text, sheet), named_elsewhere(sheet)), sheet.text);
  const auto doubts = doubts_text(settled_doubts(sheet, answer.settled));
  // Its own doubts stand unless the sheet leaves some, as in any case that names it.
  if (!sheet.stack_text.empty())
  {
    const auto stack = without_unknown(sheet.stack_text, sheet);
    text += "\n# The stack of the sheet, with the changes made to it.\n" +
            (doubts.empty() ? stack : without(stack, {"settled"}));
  }
  text += "\n# The bench on which the sheet was read.\n" + sheet.bench_text;
  text += "\n# Fitted to the readings of the bench sheet; the two numbers behind each value are the ends of "
          "its 90 % band.\n";
  for (const auto &parameter : answer.settled.parameters)
    text += fmt::format("# {}: {:.4g}, {:.4g} to {:.4g}\n", parameter.name, parameter.band.value,
                        parameter.band.low, parameter.band.high);
  for (const auto &unknown : sheet.materials)
    if (const auto *material = material_named(answer.setup, unknown.name))
      text += fmt::format("\n[[material]]\nname = \"{}\"\nfrom = \"{}\"\nsource = \"fitted to readings\"\n{}",
                          unknown.name, unknown.start.name, numbers_text(*material));
  std::string changes;
  for (std::size_t i = 0; i < sheet.unknowns.size(); ++i)
  {
    const auto &unknown = sheet.unknowns[i];
    const auto  value = answer.settled.values[i];
    if (unknown.kind == DoubtedNumber::thickness)
      changes += fmt::format("layer.{}.thickness = \"{:.9g} m\"\n", unknown.target, value);
    else if (unknown.kind == DoubtedNumber::gauge_pressure)
      changes += fmt::format("layer.{}.unit.gauge_pressure = \"{:.9g} Pa\"\n", unknown.target, value);
    else if (unknown.kind == DoubtedNumber::height)
      changes += fmt::format("drop.height = \"{:.9g} m\"\n", value);
    else if (unknown.kind == DoubtedNumber::mass)
      changes += fmt::format("drop.mass = \"{:.9g} kg\"\n", value);
    else if (unknown.kind == DoubtedNumber::guide_loss)
      changes += fmt::format("drop.guide_loss = {:.9g}\n", value);
  }
  if (!changes.empty())
    text += "\n[change]\n" + changes;
  return text + doubts;
}

Json settled_document(const Sheet &sheet, const SettledSheet &answer)
{
  Json out{
    {"schema", 1}, {"pair", sheet.pair}, {"part", sheet.part}, {"converged", answer.settled.converged}};
  out["cautions"] = cautions({&answer.setup});
  out["parameters"] = Json::array();
  for (const auto &parameter : answer.settled.parameters)
    out["parameters"].push_back({{"name", parameter.name},
                                 {"value", parameter.band.value},
                                 {"low", parameter.band.low},
                                 {"high", parameter.band.high},
                                 {"before", band_json(parameter.before)},
                                 {"doubt_left", parameter.doubt_left}});
  out["readings"] = Json::array();
  out["predictions"] = Json::array();
  for (std::size_t i = 0; i < answer.probes.size(); ++i)
  {
    const auto       &seen = answer.settled.observations[i];
    const auto       &probe = answer.probes[i];
    const std::string unit = !probe.unit.empty() ? probe.unit : std::string(dimension_name(probe.dimension));
    Json              one{{"name", seen.name},
             {"predicted", seen.predicted.value},
             {"low", seen.predicted.low},
             {"high", seen.predicted.high},
             {"unit", unit}};
    if (i < answer.n_readings)
    {
      one["measured"] = seen.measured.value;
      one["measured_low"] = seen.measured.low;
      one["measured_high"] = seen.measured.high;
      one["without_this"] = band_json(seen.without_it);
      one["verdict"] = settle::verdict_words(seen.verdict);
      one["held_out"] = seen.held_out;
    }
    out[i < answer.n_readings ? "readings" : "predictions"].push_back(one);
  }
  out["covariance"] = answer.settled.covariance;
  return out;
}

std::string settled_json(const Sheet &sheet, const SettledSheet &answer)
{
  return text_of(settled_document(sheet, answer), 2) + "\n";
}
} // namespace solemech::tools
