// SPDX-License-Identifier: Apache-2.0
// One function a kind of reading. A new kind: its file, its line in the table of reading_reader.cc, and its
// word in tools/language/sheet_entries.cc.
#pragma once

#include "tools/answers/sheet/reading_desk.h"

namespace solemech::tools
{
void read_drop(ReadingDesk &desk, const materials::Fields &fields);
void read_impact_record(ReadingDesk &desk, const materials::Fields &fields);
void read_press_loop(ReadingDesk &desk, const materials::Fields &fields);
void read_hardness(ReadingDesk &desk, const materials::Fields &fields);
void read_density(ReadingDesk &desk, const materials::Fields &fields);
void read_abrasion(ReadingDesk &desk, const materials::Fields &fields);
/// Hours left, told beside the answer; nothing is settled on it.
void read_tread_left(ReadingDesk &desk, const materials::Fields &fields);
/// Kept with the sheet, and the answer says so: there is no bending bench.
void read_bend(ReadingDesk &desk, const materials::Fields &fields);

/// Hardness or density as a text that stands somewhere in the sheet.
struct MaterialNote
{
  std::string       text, layer;
  const toml::node &node;  ///< where it stands
  std::string       title; ///< for messages
  bool              held_out = false;
};
void take_hardness(ReadingDesk &desk, const MaterialNote &note, const std::string &where);
void take_density(ReadingDesk &desk, const MaterialNote &note);
} // namespace solemech::tools
