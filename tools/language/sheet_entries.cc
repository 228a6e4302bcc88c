// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sheet_entries.h"

namespace solemech::tools
{
using namespace materials;

namespace
{
using D = Dimension;

const Entry entries[] = {
  {"pair", "label", D::text, any_value, "", "What you call the pair."},
  {"pair", "part", D::choice, any_value, "", "Which part of it.", "heel|forefoot"},
  {"pair", "cut", D::text, any_value, "",
   "What has been cut so far, such as \"upper off, plug cut free\"; a plan leaves out what that has ended."},
  {"pair", "tools", D::list, any_value, "",
   "What you can read with: rule, callipers, scales, gauge, sensor, camera, press. A plan recommends nothing "
   "else."},
  {"reading", "kind", D::choice, any_value, required, "What was read.",
   "rebound|peak force|deceleration|compression|contact time|hardness|density|impact record|press loop|bend|"
   "abrasion|tread left"},
  {"reading", "value", D::text, any_value, "", "One value, with +- if you know it.", "", "values"},
  {"reading", "values", D::list, any_value, "", "Several hits or spots.", "", "value"},
  {"reading", "by", D::choice, any_value, "", "How the height was read.", "eye, rule|camera|sensor"},
  {"reading", "height", D::text, any_value, "", "Fall of this reading, when it is not that of the rig."},
  {"reading", "mass", D::text, any_value, "", "Drop weight of this reading, when it is not that of the rig."},
  {"reading", "rest", D::text, any_value, "",
   "Time between the hits; without it each hit found a rested stack."},
  {"reading", "layer", D::text, any_value, "",
   "Layer that a hardness, density or abrasion belongs to; abrasion: the outermost when not written."},
  {"reading", "where", D::choice, any_value, "", "A gauge: on a thick pad, or on the stack.", "pad|in place"},
  {"reading", "file", D::file, any_value, "", "CSV file of a sensor, beside the sheet."},
  {"reading", "diameter", D::text, any_value, "",
   "Of the flat head of a press, or of an abrasive sleeve (13 mm when not written)."},
  {"reading", "duration", D::text, any_value, "", "Of one cycle of a press."},
  {"reading", "seconds", D::text, any_value, "", "Abrasion: that the sleeve was held in one place."},
  {"reading", "speed", D::text, any_value, "",
   "Abrasion: of the tool; 8000 rpm when not written (common practice, no source)."},
  {"reading", "force", D::text, any_value, "", "Abrasion: of the hand; 2 N when not written."},
  {"reading", "reference", D::text, any_value, "",
   "Abrasion: known rubber of the library that the abrasive is judged by; rubber-64a when not written."},
  {"reading", "reference_depth", D::text, any_value, "",
   "Abrasion: what the same tool, hand and time took from that rubber; without it the abrasive is known to a "
   "factor of three."},
  {"reading", "hours", D::text, any_value, "", "Tread left: worn for so long, such as 120 h."},
  {"reading", "new_depth", D::text, any_value, "", "Tread left: depth of the tread when it was new."},
  {"reading", "worn_at", D::text, any_value, "",
   "Tread left: depth at which you call it worn; 0.5 mm when not written."},
  {"reading", "part", D::choice, any_value, "",
   "Part that it was read on; another one than that of the sheet is refused.", "heel|forefoot"},
  {"reading", "hold_out", D::flag, any_value, "false", "Compare only, never settle on it."},
  {"reading", "wore_through", D::flag, any_value, "false", "Abrasion: the depth is a least one."},
  {"reading", "note", D::text, any_value, "", "What else is to be said."},
};

const Section sections[] = {
  {"pair", "[pair]", "What a bench sheet was filled in for. It makes a case file a bench sheet."},
  {"reading", "[[reading]]",
   "What was read on the bench, one block a kind and height. A file with such blocks is a bench sheet: `run` "
   "settles it."},
};
} // namespace

std::span<const Entry> sheet_entries()
{
  return entries;
}

std::span<const Section> sheet_sections()
{
  return sections;
}
} // namespace solemech::tools
