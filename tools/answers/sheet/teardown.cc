// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/teardown.h"

#include "tools/language/small_letters.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
bool has_unit(const Sheet &sheet)
{
  return std::any_of(sheet.setup.layers.begin(), sheet.setup.layers.end(),
                     [](const solver::Layer &layer) { return layer.unit.has_value(); });
}

/// A plug of this size cannot be cut without cutting the unit.
bool unit_reaches_out(const Sheet &sheet)
{
  return std::any_of(sheet.setup.layers.begin(), sheet.setup.layers.end(), [&](const solver::Layer &layer) {
    return layer.unit &&
           (layer.unit->outside_volume > 0 || layer.unit->diameter >= 2 * sheet.setup.plug.radius);
  });
}

bool has_plate(const Sheet &sheet)
{
  return std::any_of(sheet.setup.layers.begin(), sheet.setup.layers.end(), [](const solver::Layer &layer) {
    return std::holds_alternative<materials::PlateData>(layer.material.data);
  });
}

std::string names_of(const Sheet &sheet, bool (*wanted)(const solver::Layer &))
{
  std::string names;
  for (const auto &layer : sheet.setup.layers)
    if (wanted(layer))
      names += (names.empty() ? "" : ", ") + layer.name;
  return names;
}

bool is_foam(const solver::Layer &layer)
{
  return layer.material.family == "foam" && !layer.unit;
}

void uncut_steps(const Sheet &sheet, Dismantled so_far, std::vector<TeardownStep> &steps)
{
  const bool intact = so_far == Dismantled::nothing, whole_sole = so_far < Dismantled::plug;
  if (intact)
    steps.push_back({false, "Weigh both shoes of the pair, to 1 g",
                     "mass; whether the two are alike before you cut one", ""});
  if (so_far == Dismantled::layers)
    return;
  steps.push_back(
    {false, "Measure outside with callipers and rule: height of the sole where both faces can be reached",
     "a check of the sum of the layers", ""});
  const auto &outermost = sheet.setup.layers.back();
  steps.push_back(
    {false, fmt::format("Press the gauge on the {} in place, five spots", outermost.name),
     outermost.thickness < 6e-3
       ? "hardness; below 6 mm the gauge also feels what lies under it: write where = \"in place\""
       : "hardness",
     ""});
  steps.push_back({false,
                   "Press the gauge where a foam lies open and is at least 6 mm thick, such as a side wall",
                   "hardness: where = \"pad\"", ""});
  if (const auto *drop = rigs::fall_of(sheet.setup); drop && intact)
    steps.push_back({false,
                     fmt::format("Drop on the intact sole, {:.2f} kg from {:.0f} mm, at least three hits",
                                 drop->mass, 1e3 * drop->height),
                     "rebound with upper and walls on; compared with the plug it shows what the cut does",
                     ""});
  if (whole_sole)
    steps.push_back({false,
                     has_plate(sheet)
                       ? "Bend the shoe at the ball; a plate works in bending and hardly shows on a drop"
                       : "Bend the shoe at the ball",
                     "force and angle, kept on the sheet", ""});
  else
    steps.push_back(
      {false, "Take the drops and press loops of this sheet on the plug, all of them before the next cut",
       "rebound, force, compression, contact time", ""});
}

void plug_step(const Sheet &sheet, std::vector<TeardownStep> &steps)
{
  const auto &plug = sheet.setup.plug;
  if (plug.side == solver::Side::shell)
    steps.push_back(
      {true, "Cut no plug for this sheet: the shell stays on", "drops and press on the sole", ""});
  else if (unit_reaches_out(sheet))
    steps.push_back({true, "Saw no plug: the unit reaches beyond its edge, and the saw would open it",
                     "drops and press loops on the sole as it is; write side = \"shell\" in [plug]", ""});
  else
    steps.push_back(
      {true,
       fmt::format("Cut a plug of {:.0f} mm across, {}", 2e3 * plug.radius,
                   plug.side == solver::Side::ring ? "leave its firmer wall round it" : "cut free all round"),
       "the drops and press loops of this sheet; do all of them before the next cut",
       "bending of the sole, and the support from around the plug: a free edge reads differently"});
}

void cut_steps(const Sheet &sheet, Dismantled so_far, std::vector<TeardownStep> &steps)
{
  if (so_far == Dismantled::nothing)
    steps.push_back({true, "Take the upper off", "the sole alone: its mass, and the drop without the upper",
                     "fit, heel hold, the drop on the intact shoe"});
  if (so_far < Dismantled::plug)
    plug_step(sheet, steps);
  if (so_far < Dismantled::layers)
    steps.push_back({true,
                     has_unit(sheet) ? "Separate the layers, leave the unit whole" : "Separate the layers",
                     "each thickness, with callipers on the cut face; hardness on pads of at least 6 mm, "
                     "pieces stacked if need be",
                     "every drop and press loop on the stack; glue films are lost too"});
  const auto foams = names_of(sheet, is_foam);
  if (!foams.empty())
    steps.push_back({true, fmt::format("Cut a cube of 20 mm, or the largest possible, from: {}", foams),
                     "density: mass divided by volume", "the pad for the gauge, so read its hardness first"});
  if (sheet.setup.layers.back().material.family == "rubber")
    steps.push_back({true,
                     fmt::format("Grind {} with a rotary tool, last of all", sheet.setup.layers.back().name),
                     "depth ground off, compared with a known rubber", "the tread"});
}
} // namespace

Dismantled dismantled(const std::string &cut)
{
  const auto words = in_small_letters(cut);
  const auto says = [&](const char *word) { return words.find(word) != std::string::npos; };
  if (says("uncut") || says("not cut") || says("intact"))
    return Dismantled::nothing;
  return says("parted") || says("taken apart") || says("layers") ? Dismantled::layers
         : says("plug") || says("sawn")                          ? Dismantled::plug
         : says("upper")                                         ? Dismantled::upper
                                                                 : Dismantled::nothing;
}

std::vector<TeardownStep> teardown_order(const Sheet &sheet)
{
  std::vector<TeardownStep> steps;
  const auto                so_far = dismantled(sheet.cut);
  uncut_steps(sheet, so_far, steps);
  cut_steps(sheet, so_far, steps);
  return steps;
}

std::vector<std::string> teardown_cautions(const Sheet &sheet)
{
  std::vector<std::string> cautions{"Local safety rules and the instructions of your tools come first. Leave "
                                    "to licensed people what the law reserves for them.",
                                    "Saws, blades and rotary tools: clamp the work, cut away from yourself, "
                                    "eye protection, dust mask and extraction; no "
                                    "gloves or loose sleeves near a turning tool.",
                                    "Drop rig: hands out from under the weight, secure it while loading."};
  if (has_unit(sheet))
    cautions.insert(cautions.begin() + 1,
                    "The unit is under pressure: do not saw, pierce or heat it. It can burst and throw "
                    "parts. Keep every cut clear of it, and leave opening it to somebody equipped for it.");
  else
    cautions.emplace_back(
      "Look for a pressurised unit before you saw, even if the sheet has none: never cut into one.");
  if (has_plate(sheet))
    cautions.emplace_back("A cut plate is sharp and its fibres splinter. Do not breathe its dust.");
  return cautions;
}
} // namespace solemech::tools
