// SPDX-License-Identifier: Apache-2.0
// A case changed by words, whoever writes them: --set, the values of a series, --swap, --range, what a bench
// sheet takes where nothing is written. Each is read into the same list of changes, and case_tree.h carries
// every list out, so that all of them are found, refused and cured alike.
#pragma once

#include "tools/language/option_value.h"

#include <toml++/toml.h>

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace solemech::tools
{
constexpr std::string_view value_key = "value";

/// A change of one entry: its address in segments, as written, and the new value.
struct Change
{
  std::vector<std::string>  address;
  std::string               written;              ///< address for messages
  toml::table               holder;               ///< holds the value under value_key
  bool                      is_of_series = false; ///< the file's own, not the command line's
  std::optional<PlacedText> called =
    {}; ///< instead of the address: the last name alone, where no other is so
};

/// One sheet that comes into the place of a layer. What is not said stays as it was.
struct Ply
{
  PlacedText                place; ///< where it begins
  std::optional<PlacedText> material, thickness;
};

/// What comes into the place of a layer; nothing: it is taken out.
struct LayerSwap
{
  PlacedText       layer;
  std::vector<Ply> plies; ///< foot side first
};

/// Changes in the order in which they are made.
using Variant = std::vector<std::variant<LayerSwap, Change>>;
} // namespace solemech::tools
