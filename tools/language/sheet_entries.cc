// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sheet_entries.h"

namespace solemech::tools
{
using namespace materials;

namespace
{
using D = Dimension;

const Entry entries[] = {
  {"pair", "label", D::text, any_value, "", "Your name for the pair."},
  {"pair", "part", D::choice, any_value, "", "Which part of the shoe.", "heel|forefoot"},
  {"pair", "cut", D::text, any_value, "",
   "What has been cut so far, such as \"upper off, plug cut free\"; a plan leaves out what is no longer "
   "possible."},
  {"pair", "tools", D::list, any_value, "",
   "Your tools: rule, callipers, scales, gauge, sensor, camera, press. A plan recommends only readings with "
   "these."},
  {"reading", "kind", D::choice, any_value, required, "Kind of reading.",
   "rebound|peak force|deceleration|compression|contact time|hardness|density|impact record|press loop|bend|"
   "abrasion|tread left"},
  {"reading", "value", D::text, any_value, "", "One value, with +- if you know it.", "", "values"},
  {"reading", "values", D::list, any_value, "", "Several hits or spots.", "", "value"},
  {"reading", "by", D::choice, any_value, "", "How the height was read.", "eye, rule|camera|sensor"},
  {"reading", "height", D::text, any_value, "",
   "Drop height of this reading, if it differs from that of the rig."},
  {"reading", "mass", D::text, any_value, "",
   "Drop weight of this reading, if it differs from that of the rig."},
  {"reading", "rest", D::text, any_value, "",
   "Time between the hits. Without it, each hit found a rested stack."},
  {"reading", "layer", D::text, any_value, "",
   "Layer of a hardness, density or abrasion reading. Abrasion: default is the outermost."},
  {"reading", "where", D::choice, any_value, "",
   "Where the gauge was pressed: on a thick pad, or on the stack.", "pad|in place"},
  {"reading", "file", D::file, any_value, "", "CSV file of a sensor, in the folder of the sheet."},
  {"reading", "diameter", D::text, any_value, "",
   "Diameter of the flat head of a press, or of an abrasive sleeve (default 13 mm)."},
  {"reading", "duration", D::text, any_value, "", "Duration of one cycle of a press."},
  {"reading", "seconds", D::text, any_value, "", "Abrasion: time that the sleeve was held in one place."},
  {"reading", "speed", D::text, any_value, "",
   "Abrasion: speed of the tool; default 8000 rpm (common practice, no source)."},
  {"reading", "force", D::text, any_value, "", "Abrasion: force of the hand; default 2 N."},
  {"reading", "reference", D::text, any_value, "",
   "Abrasion: known rubber of the library that calibrates the abrasive; default rubber-64a."},
  {"reading", "reference_depth", D::text, any_value, "",
   "Abrasion: depth that the same tool, hand and time took off that rubber. Without it the abrasive is known "
   "only to a factor of three."},
  {"reading", "hours", D::text, any_value, "", "Tread left: hours of play so far, such as 120 h."},
  {"reading", "new_depth", D::text, any_value, "", "Tread left: depth of the tread when it was new."},
  {"reading", "worn_at", D::text, any_value, "",
   "Tread left: depth at which you call it worn; default 0.5 mm."},
  {"reading", "part", D::choice, any_value, "", "Part that it was read on. Must be the part of the sheet.",
   "heel|forefoot"},
  {"reading", "hold_out", D::flag, any_value, "false", "Compare only; fit nothing to it."},
  {"reading", "wore_through", D::flag, any_value, "false", "Abrasion: the depth is a lower bound."},
  {"reading", "note", D::text, any_value, "", "Anything else."},
};

const Section sections[] = {
  {"pair", "[pair]",
   "The pair that a bench sheet is about. It makes a case file a bench sheet. In a file with both parts of a "
   "pair, blocks of one part begin with its name: [[heel.layer]], [forefoot.plug], [[heel.reading]]."},
  {"reading", "[[reading]]",
   "Readings from the bench, one block for each kind and height. A file with such blocks is a bench sheet: "
   "`run` fits the model to it."},
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
