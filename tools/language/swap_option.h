// SPDX-License-Identifier: Apache-2.0
// What a trial changes, as written on the command line.
//   LAYER = MATERIAL THICKNESS      another material and thickness in that place
//   LAYER = MATERIAL                another material, same thickness
//   LAYER = THICKNESS               same material, another thickness
//   LAYER = A 2 mm + B 2 mm         several in that place, foot side first
//   LAYER = none                    taken out
//   LAYER.ENTRY = VALUE             one entry
// and a range of one entry: ENTRY=LOW..HIGH UNIT [by STEP].
#pragma once

#include "tools/language/addresses.h"
#include "tools/language/option_value.h"
#include "tools/language/problem.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace solemech::tools
{
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

using Swap = std::variant<LayerSwap, Change>;

constexpr const char *swap_option = "--swap", *range_option = "--range";

/// Reads the texts after --swap. Every slip goes to `problems`, with its place in the text.
std::vector<Swap> read_swaps(const std::vector<std::string> &texts, materials::Problems &problems);

/// The text as it is told to people: "insert = pp-semirigid 2 mm".
std::string swap_text(const std::string &option);

/// A range: the entry as written, and its values.
struct EntryRange
{
  PlacedText              entry;
  std::string             unit;    ///< as written, may be empty
  std::vector<double>     numbers; ///< in that unit, rising, both ends included
  std::vector<PlacedText> values;  ///< the same with unit, as an entry takes them
};

/// Reads the text after --range. Without a step some seven points at round distances are taken.
EntryRange read_range(const std::string &text, materials::Problems &problems);
} // namespace solemech::tools
