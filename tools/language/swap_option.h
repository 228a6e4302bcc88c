// SPDX-License-Identifier: Apache-2.0
// What the command line changes, as written. After --set one entry, ENTRY=VALUE; after --swap of a trial
//   LAYER = MATERIAL THICKNESS      another material and thickness in that place
//   LAYER = MATERIAL                another material, same thickness
//   LAYER = THICKNESS               same material, another thickness
//   LAYER = A 2 mm + B 2 mm         several in that place, foot side first
//   LAYER = none                    taken out
//   LAYER.ENTRY = VALUE             one entry
// and a range of one entry: ENTRY=LOW..HIGH UNIT [by STEP].
#pragma once

#include "tools/language/problem.h"
#include "tools/language/variant.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Reads the text after one --set. A slip goes to `problems` and gives no address.
Change change_from_option(const std::string &option, materials::Problems &problems);

constexpr const char *swap_option = "--swap", *range_option = "--range";

/// Reads the texts after --swap. Every slip goes to `problems`, with its place in the text.
Variant read_swaps(const std::vector<std::string> &texts, materials::Problems &problems);

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

/// The change to a value of a range; by the last name alone where no block is written.
Change change_of_range(const EntryRange &range, std::size_t value);

/// Reads the text after --range. Without a step some seven points at round distances are taken.
EntryRange read_range(const std::string &text, materials::Problems &problems);
} // namespace solemech::tools
