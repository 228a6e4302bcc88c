// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/teardown.h"

#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

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
                     "mass; whether the two are alike before one is cut", ""});
  if (so_far == Dismantled::layers)
    return;
  steps.push_back({false, "Callipers and rule outside: height of the sole where both faces can be reached",
                   "a check of the sum of the layers", ""});
  const auto &outermost = sheet.setup.layers.back();
  steps.push_back({false, fmt::format("Gauge on the {} in place, five spots", outermost.name),
                   outermost.thickness < 6e-3
                     ? "hardness; under 6 mm the gauge feels what lies below: where = \"in place\""
                     : "hardness",
                   ""});
  steps.push_back(
    {false, "Gauge on thick pads of the kind (6 mm and more) where a foam lies open, such as a side wall",
     "hardness: where = \"pad\"", ""});
  if (const auto *drop = rigs::fall_of(sheet.setup); drop && intact)
    steps.push_back({false,
                     fmt::format("Drop on the intact sole, {:.2f} kg from {:.0f} mm, three hits and more",
                                 drop->mass, 1e3 * drop->height),
                     "rebound with upper and walls on: beside that of the plug it shows what the cut does",
                     ""});
  if (whole_sole)
    steps.push_back({false,
                     has_plate(sheet)
                       ? "Bend the shoe at the ball; a plate works in bending, hardly on a drop"
                       : "Bend the shoe at the ball",
                     "force and angle, to keep on the sheet", ""});
  else
    steps.push_back({false,
                     "Drops and press loops of this sheet on the plug; all of them before the next cut",
                     "rebound, force, compression, contact time", ""});
}

void plug_step(const Sheet &sheet, std::vector<TeardownStep> &steps)
{
  const auto &plug = sheet.setup.plug;
  if (plug.side == solver::Side::shell)
    steps.push_back(
      {true, "No plug is cut for this sheet: the shell stays on", "drops and press on the sole", ""});
  else if (unit_reaches_out(sheet))
    steps.push_back(
      {true, "No plug is sawn: the unit reaches beyond its edge, and the saw would open it",
       "drops and press loops on the sole as it is; side = \"shell\" in [plug] tells the model so", ""});
  else
    steps.push_back(
      {true,
       fmt::format("Plug of {:.0f} mm across cut {}", 2e3 * plug.radius,
                   plug.side == solver::Side::ring ? "with its firmer wall left round it" : "free"),
       "the drops and press loops of this sheet; do all of them before the next cut",
       "bending of the sole, and the hold of what stood around the plug: a free edge reads otherwise"});
}

void cut_steps(const Sheet &sheet, Dismantled so_far, std::vector<TeardownStep> &steps)
{
  if (so_far == Dismantled::nothing)
    steps.push_back({true, "Upper off", "the sole alone: its mass, the drop without the upper",
                     "fit, heel hold, the drop on the intact shoe"});
  if (so_far < Dismantled::plug)
    plug_step(sheet, steps);
  if (so_far < Dismantled::layers)
    steps.push_back(
      {true, has_unit(sheet) ? "Layers parted, the unit left whole" : "Layers parted",
       "each thickness by callipers on the cut face; hardness on pads of 6 mm and more, pieces laid on each "
       "other if need be",
       "every drop and press loop on the stack; glue films go with it"});
  const auto foams = names_of(sheet, is_foam);
  if (!foams.empty())
    steps.push_back({true, fmt::format("Cube of 20 mm, or the largest that comes out, from: {}", foams),
                     "density: mass over volume", "the pad for the gauge; read its hardness first"});
  if (sheet.setup.layers.back().material.family == "rubber")
    steps.push_back({true, fmt::format("{} under a rotary tool, last of all", sheet.setup.layers.back().name),
                     "depth of wear against a known rubber", "the tread"});
}
} // namespace

Dismantled dismantled(const std::string &cut)
{
  std::string words;
  for (const unsigned char c : cut)
    words += static_cast<char>(std::tolower(c));
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
  std::vector<std::string> cautions{"Local safety rules and the instructions of your tools come first; what "
                                    "the law reserves for licensed people, leave "
                                    "to them.",
                                    "Saws, blades and rotary tools: clamp the work, cut away from yourself, "
                                    "eye protection, dust mask and extraction; no "
                                    "gloves or loose sleeves near a turning tool.",
                                    "Drop rig: hands out from under the weight, secure it while loading."};
  if (has_unit(sheet))
    cautions.insert(
      cautions.begin() + 1,
      "The unit is under pressure: do not saw, pierce or heat it, it can burst and throw parts. Keep every "
      "cut clear of it; opening one is for somebody equipped for it.");
  else
    cautions.emplace_back(
      "Look for a pressurised unit before the saw, also where the sheet has none: never cut into one.");
  if (has_plate(sheet))
    cautions.emplace_back("A cut plate is sharp and its fibres splinter; its dust is not for breathing.");
  return cautions;
}
} // namespace solemech::tools
