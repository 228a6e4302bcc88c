// SPDX-License-Identifier: Apache-2.0
#include "tools/language/layer_swaps.h"

#include "tools/language/addresses.h"
#include "tools/language/nearest_name.h"
#include "tools/language/schema.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace solemech::tools
{
using materials::Problems;

namespace
{
void note(Problems &problems, const PlacedText &at, const std::string &entry, std::string reason,
          std::string cure)
{
  problems.add({swap_option, at.line, at.column, entry, std::move(reason), std::move(cure)});
}

std::vector<std::string> layer_names(const toml::array &layers)
{
  std::vector<std::string> names;
  for (const auto &node : layers)
    names.push_back(node.is_table() ? (*node.as_table())["name"].value_or(std::string()) : std::string());
  return names;
}

/// Sets a text entry of a layer, with the place of the option.
void set_text(toml::table &layer, std::string_view entry, const PlacedText &value)
{
  if (auto holder = option_value(value, swap_option, true))
    set_entry(layer, "layer", entry, *holder->get(value_key));
}

/// One sheet on the base of the layer it replaces.
toml::table sheet(toml::table layer, const Ply &ply, const std::string &name)
{
  layer.insert_or_assign("name", name);
  if (ply.material)
  {
    set_text(layer, "material", *ply.material);
    layer.erase("unit");
  }
  if (ply.thickness)
    set_text(layer, "thickness", *ply.thickness);
  return layer;
}

/// What is missing of the sheets of a swap.
bool are_whole(const LayerSwap &swap, bool is_new, Problems &problems)
{
  bool whole = true;
  for (const auto &ply : swap.plies)
  {
    if (is_new && !ply.material)
    {
      note(problems, ply.place, swap.layer.text, "a new layer needs a material",
           fmt::format("Write {} = eva-insert {}, for example", swap.layer.text, ply.place.text));
      whole = false;
    }
    if ((is_new || swap.plies.size() > 1) && !ply.thickness)
    {
      note(problems, ply.place, swap.layer.text,
           is_new ? "a new layer needs a thickness" : "each of several sheets needs a thickness",
           fmt::format("Write {} 2 mm, for example", ply.place.text));
      whole = false;
    }
  }
  return whole;
}

void unknown_layer(const LayerSwap &swap, std::vector<std::string> names, Problems &problems)
{
  const auto list = fmt::format("The layers of this case: {}", fmt::join(names, ", "));
  if (!swap.plies.empty())
    names.insert(names.end(), laid_in_names.begin(), laid_in_names.end());
  const auto near = materials::nearest_name(swap.layer.text, names);
  note(problems, swap.layer, swap.layer.text, "there is no such layer",
       !near.empty() ? fmt::format("Did you mean \"{}\"?", near)
       : swap.plies.empty()
         ? list
         : fmt::format("{}; a new one must be called {}", list, fmt::join(laid_in_names, ", ")));
}

/// A zone of a tread takes another rubber; its bars keep their shape.
void apply_to_zone(toml::table &zone, const LayerSwap &swap, Problems &problems)
{
  if (swap.plies.size() != 1 || !swap.plies[0].material || swap.plies[0].thickness)
    return note(problems, swap.layer, swap.layer.text, "a zone can only get another rubber",
                fmt::format("Write {} = rubber-67a, for example", swap.layer.text));
  if (auto holder = option_value(*swap.plies[0].material, swap_option, true))
    set_entry(zone, "zone", "rubber", *holder->get(value_key));
}

/// In a slide the bar and its skin are the layers: one rubber and one thickness each. Zones of a tread stand
/// beside them.
void apply_to_lug(toml::table &tree, toml::table &lug, const LayerSwap &swap, Problems &problems)
{
  std::vector<std::string> names{"skin", "lug"};
  if (auto *zones = tree.get_as<toml::array>("zone"))
    for (auto &node : *zones)
      if (auto *zone = node.as_table())
      {
        names.push_back((*zone)["name"].value_or(std::string()));
        if (names.back() == swap.layer.text)
          return apply_to_zone(*zone, swap, problems);
      }
  const bool is_bar = swap.layer.text == "lug";
  if (!is_bar && swap.layer.text != "skin")
  {
    const auto near = materials::nearest_name(swap.layer.text, names);
    return note(problems, swap.layer, swap.layer.text, "there is no such layer",
                near.empty() ? fmt::format("The layers{} of this case: {}",
                                           names.size() > 2 ? " and zones" : "", fmt::join(names, ", "))
                             : fmt::format("Did you mean \"{}\"?", near));
  }
  if (swap.plies.size() != 1)
    return note(problems, swap.layer, swap.layer.text, "a bar and its skin can only get one rubber each",
                fmt::format("Write {} = rubber-67a, for example", swap.layer.text));
  const auto set = [&](const char *entry, const std::optional<PlacedText> &value) {
    if (auto holder = value ? option_value(*value, swap_option, true) : std::nullopt)
      set_entry(lug, "lug", entry, *holder->get(value_key));
  };
  set(is_bar ? "rubber" : "skin_rubber", swap.plies[0].material);
  set(is_bar ? "height" : "skin", swap.plies[0].thickness);
}
} // namespace

void swap_layers(toml::table &tree, const LayerSwap &swap, Problems &problems)
{
  if (auto *lug = tree.get_as<toml::table>("lug"))
    return apply_to_lug(tree, *lug, swap, problems);
  auto *layers = tree.get_as<toml::array>("layer");
  if (!layers)
    return; // told by the reader
  const auto &name = swap.layer.text;
  const auto  names = layer_names(*layers);
  const auto  found = std::find(names.begin(), names.end(), name);
  const bool  is_new = found == names.end();
  if (is_new && (swap.plies.empty() ||
                 std::find(laid_in_names.begin(), laid_in_names.end(), name) == laid_in_names.end()))
    return unknown_layer(swap, names, problems);
  if (!is_new && swap.plies.empty() && names.size() == 1)
    return note(problems, swap.layer, name, "no stack would be left without it",
                "Put another layer in its place");
  if (!are_whole(swap, is_new, problems))
    return;

  auto        at = is_new ? layers->cbegin() : layers->cbegin() + std::distance(names.begin(), found);
  toml::table before;
  if (!is_new)
  {
    if (auto *table = layers->get(static_cast<std::size_t>(found - names.begin()))->as_table())
      before = std::move(*table); // moved entries keep their places
    at = layers->erase(at);
  }
  for (std::size_t i = 0; i < swap.plies.size(); ++i)
  {
    const bool last = i + 1 == swap.plies.size();
    at = layers->insert(at, sheet(last ? std::move(before) : toml::table(before), swap.plies[i],
                                  i == 0 ? name : fmt::format("{}-{}", name, i + 1)));
    ++at;
  }
}
} // namespace solemech::tools
