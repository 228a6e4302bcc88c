// SPDX-License-Identifier: Apache-2.0
// The texts are put together from blocks, so that heel and forefoot differ only in their layers. Cautions and
// tool advice are common practice, no source.
#include "tools/answers/sheet/blank_sheet.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <sstream>
#include <vector>

namespace solemech::tools
{
namespace
{
constexpr const char *head =
  R"(# Every number in this sheet is INVENTED, or left out so that a default is used: replace it with yours.
# A line that starts with # is a remark. Remove the # to use the line.
#
# Write values in quotes with their unit, decimals with a point: "16.0 mm". You may add an uncertainty:
# "16.0 mm +- 0.5" means that the true value lies in this band nine times out of ten. If you give none, the
# uncertainty of the instrument is assumed, and `solemech check` says so. It also lists the lines that still say
# INVENTED: remove the word together with the invented number.
# Units: mm, cm, in; kg, g, lb, oz; kPa, bar, psi; ShoreA, ShoreD, ShoreOO, AskerC.
#
# Read first, cut later. Start with what harms nothing: weigh the shoe, read the hardness where a gauge reaches,
# drop the weight on the whole shoe, take photos. What the saw takes away cannot be read again.
#
# Before you cut:
#   Saw, knife, rotary tool: clamp the work, cut away from yourself, eye protection. No loose sleeves, and no gloves
#   near a turning blade. Dust mask and extraction: do not breathe foam, rubber or, above all, fibre dust.
#   A pressurised unit can burst: do not saw, pierce or heat it. Keep the cut clear of it, or leave it to somebody
#   equipped for it. The edge of a cut plate is sharp and splinters.
#   Local safety rules and the instructions of your tools come first.
)";

constexpr const char *bench = R"(
# The bench. This one is invented: 1.20 kg, flat 40 mm puck, fall 400 mm. For your own, run
# solemech sheet --rig my-rod.toml, fill the file in, then write rig = "my-rod.toml" here.
rig = "guided-rod-1200"
)";

constexpr const char *layers_note = R"(
# Layers from the foot down to the ground, as the cut face shows them. Read a thickness with callipers on the cut
# face at three spots, without squeezing the foam, and write the middle one. +- 0.5 mm is usual for foam (common
# practice). If you give no +-, that of the callipers is assumed: +- 0.2 mm on foam, 0.1 mm on plate and rubber,
# 0.5 mm beside a unit. Leave the line out if you cannot read it: a wide band is assumed, and your readings narrow
# it. Each +- and each unknown material is one more number to find: if you have few readings, use few.
#
# material: "unknown foam" and "unknown rubber" are found from your readings. Add a letter, "unknown foam B", to
#   say that all layers with this letter are the same foam. `solemech materials` lists the known ones.
# hardness: press the gauge on a cut pad of at least 6 mm (10 mm for AskerC), 12 mm from its edges, and read it
#   after 3 s (ISO 48-4, from memory). Always name the scale: there is no default. If you give no +-, +- 3 points
#   are assumed for a hand-held gauge. ShoreA above 90: use ShoreD. ShoreD below 20: use ShoreA. A reading on
#   rubber thinner than 6 mm is assumed to be taken on the stack, with the foam below it.
# density: weigh a cut cube (20 mm is enough) and divide by its volume. If you give no +-, +- 5 % is assumed. If you
#   leave it out, any density of a foam in the library is allowed.
)";

constexpr const char *heel_layers = R"(
[[layer]]
name = "core"                       # the soft middle; choose layer names freely
material = "unknown foam"
thickness = "16.0 mm +- 0.5"        # INVENTED; callipers
# hardness = "42 AskerC +- 3"
# density = "175 kg/m3 +- 9"
# core_diameter = "54 mm"           # a core that does not reach the edge of the piece ...
# ring = "unknown foam B"           # ... and the firmer foam around it

[[layer]]
name = "carrier"                    # the firmer foam below; not in your shoe: remove this block
material = "unknown foam B"         # the same foam as the ring above, if you use it
thickness = "7.0 mm +- 0.5"         # INVENTED; callipers
# hardness = "54 AskerC +- 3"
# density = "220 kg/m3 +- 11"

[[layer]]
name = "outsole"
material = "rubber-60a"             # INVENTED; or "unknown rubber"
thickness = "2.0 mm"                # INVENTED; callipers, without the pattern
# hardness = "60 ShoreA +- 3"

[plug]
radius = "37 mm"                    # INVENTED; half the width of the cut piece, rule
side = "free"                       # cut free all round; "wrapped" or "shell": see the list of entries
)";

constexpr const char *forefoot_layers = R"(
[[layer]]
name = "topper"                     # foam over the unit; not in your shoe: remove this block
material = "unknown foam A"
thickness = "4.0 mm +- 0.5"         # INVENTED; callipers
# hardness = "54 AskerC +- 3"
# density = "220 kg/m3 +- 11"

# If there is a pressurised unit: read its thickness where the side wall shows it, or take the height of the whole
# piece minus the other layers. Read its diameter on a photo with a rule in it. Never cut into the unit, heat it or
# open it to measure. If there is none: remove [layer.unit] and its lines; the layer is then plain foam.
[[layer]]
name = "air"
material = "eva-firm"               # INVENTED; the foam around the unit
thickness = "8.0 mm +- 0.5"         # INVENTED; callipers
[layer.unit]
diameter = "62 mm"                  # INVENTED; across the unit, rule
film = "tpu-film"
film_thickness = "0.6 mm"           # INVENTED; hard to read on a closed unit
gauge_pressure = "140 kPa +- 40"    # INVENTED; your readings find it. Left out: 120 kPa +- 80
# state = "open"                    # a unit that has lost its air

[[layer]]
name = "plate"                      # not in your shoe: remove this block
material = "glass-nylon-plate"      # INVENTED
thickness = "1.2 mm"                # INVENTED; callipers. Cut edges are sharp

[[layer]]
name = "base"
material = "unknown foam A"         # the same foam as the topper; if not: "unknown foam B"
thickness = "4.5 mm +- 0.5"         # INVENTED; callipers

[[layer]]
name = "outsole"
material = "rubber-67a"             # INVENTED; or "unknown rubber"
thickness = "1.8 mm"                # INVENTED; callipers, without the pattern
# hardness = "67 ShoreA +- 3"

[plug]
radius = "42 mm"                    # INVENTED; half the width of the cut piece, rule; wider than the unit
side = "free"                       # cut free all round; "wrapped" or "shell": see the list of entries
)";

constexpr const char *readings = R"(
# Readings: remove the # from those that you have, and put your numbers in. Without any the answer is a prediction
# with wide bands; each reading narrows the unknowns. Keep your hands out from under the weight, secure it while you
# load, and guard against a rebound to the side.
# Write hold_out = true below a reading to compare it only: nothing is then fitted to it.

# Rebound: rise of the weight above the level of first touch. Take several hits, each on a rested stack; write
# rest = "30 s" if they followed each other that quickly. Assumed: +- 6 mm by eye on a rule, +- 2 mm by camera.
# [[reading]]
# kind = "rebound"
# values = ["246 mm", "241 mm", "244 mm"]
# by = "eye, rule"                  # or "camera"

# A drop from a second height helps more than a third hit from the first one.
# [[reading]]
# kind = "rebound"
# height = "200 mm"
# value = "124 mm"

# Greatest compression, from a slow-motion film with a rule in the picture. Assumed: +- 0.5 mm.
# [[reading]]
# kind = "compression"
# value = "7.6 mm"

# Time on the stack, from a sensor or from frames counted in a film. Assumed: +- 0.3 ms. At 240 frames per second
# one frame is 4 ms: write that as +-.
# [[reading]]
# kind = "contact time"
# value = "9.0 ms +- 0.4"

# Peak force from a sensor under the stack. Assumed: +- 5 %. The same for "deceleration" of the weight, a plain
# number in g.
# [[reading]]
# kind = "peak force"
# value = "1.25 kN"

# Hardness and density may also be given here, with their layer. where = "pad": read on a cut piece;
# "in place": read on the stack, top or bottom layer only.
# [[reading]]
# kind = "hardness"
# layer = "outsole"
# where = "in place"
# value = "60 ShoreA"

# Whole record of a sensor: a CSV file in the folder of this sheet. Its first line names columns and units:
# time [ms], force [kN]      or      time [ms], acceleration [g]
# Start the record some milliseconds before first touch: they show where its zero is.
# [[reading]]
# kind = "impact record"
# file = "impact.csv"

# Loop of a press: a CSV file with columns force and compression, the diameter of the flat head, and the duration of
# one cycle.
# [[reading]]
# kind = "press loop"
# file = "press.csv"
# diameter = "40 mm"
# duration = "1 s"

# Depth of the groove that an abrasive sleeve grinds when held in one place. Do this last of all, with eye protection,
# mask and extraction, without gloves. Grind a known rubber with the same sleeve, hand and time beside it: without
# that depth the abrasive is known only to a factor of three. wore_through = true: the depth is a lower bound.
# [[reading]]
# kind = "abrasion"
# layer = "outsole"
# value = "1.6 mm +- 0.2"
# wore_through = false
# seconds = "6 s"
# diameter = "13 mm"
# reference = "rubber-64a"
# reference_depth = "1.4 mm +- 0.2"

# Tread left on a worn pair: predicts how long it will last. Nothing is fitted to it.
# [[reading]]
# kind = "tread left"
# value = "1.9 mm"
# hours = "120 h"
# new_depth = "3.0 mm"
# worn_at = "1.0 mm"
)";

constexpr const char *pair_note = R"(
# This file holds both parts of the pair, read under one rod: [[heel.layer]] is a layer of the heel,
# [[forefoot.layer]] one of the forefoot, and so on. The rod above counts for both. A letter behind an unknown foam
# counts within its part. When it is filled in: solemech check, then solemech pair.
)";

constexpr const char *forefoot_readings = R"(
# The same kinds of readings for the forefoot:
# [[forefoot.reading]]
# kind = "rebound"
# values = ["309 mm", "305 mm", "311 mm"]
# by = "eye, rule"                  # or "camera"
)";

constexpr const char *rig =
  R"(# A bench with a drop weight. Every number here is INVENTED, or left out so that a default is used: replace it with
# yours and remove the word. Then write rig = "name of this file" in your bench sheets in the same folder.
# Write values in quotes with their unit, decimals with a point. The uncertainty (+-) of mass, height or guide loss
# does not go here but into the sheet that uses this file:
#   [drop]
#   guide_loss = "3 % +- 1 %"
#
# Keep your hands out from under the weight. Hold it with a pin or strap while you load. A guard stops a rebound to
# the side.
# Local safety rules come first.
format = 1
title = "my drop rod, invented numbers"

[drop]
mass = "1.20 kg"         # INVENTED; everything that falls: weight, puck, screws and sensor, on kitchen scales
height = "400 mm"        # INVENTED; rule, from the face of the puck to the stack at rest, not to the base

# Face of the puck: "flat", "sphere", or "spherical-ended" for a cylinder with a round end.
shape = "flat"
diameter = "40 mm"       # INVENTED; callipers
edge_radius = "3 mm"     # INVENTED; radius gauge; flat face only; left out: 1 mm
# end_radius = "30 mm"   # spherical-ended only

# Share of the energy that the guide takes each way, down and up. Drop the weight on a reference block, a hard
# rubber whose return without a guide you know, and read the rise. Then
#   guide loss = 1 - square root of (rise / (height x return of the block))
# Invented example: rise 226 mm of 400 mm on a block that returns 60 %: 1 - root(226 / 240) = 3 %.
# Or film the last centimetres of the fall for the speed at first touch: 1 - speed^2 / (2 x 9.81 m/s2 x height).
# Invented example: 2.76 m/s after 0.400 m: 1 - 2.76^2 / 7.85 = 3 %.
# Oil the rod and set it plumb. Repeat this on each day at the bench: a dry or leaning rod takes more. Left out: 0 %.
guide_loss = "3 %"       # INVENTED

# The base under the stack. A heavy block on a concrete floor counts as rigid: leave both lines out. A base lighter
# than about 50 drop weights (common practice) moves and takes energy: weigh it, and estimate what it stands on.
# base_mass = "25 kg"            # scales
# base_stiffness = "2000 N/mm"   # load divided by sinking, dial gauge beside the base; left out: it floats

# As written, every hit falls on a rested stack. For hits in quick succession:
# hits = 3               # recorded
# discarded = 2          # before them, not counted
# rest = "30 s"          # between hits

[surroundings]
temperature = "23 °C"    # INVENTED; thermometer beside the shoe, after two hours in the room
)";

std::string head_of(const std::string &what, const std::string &title)
{
  return "# Bench sheet of a " + what + ".\n" + head + "format = 1\ntitle = \"" + title +
         ", invented numbers\"\ninvented = true                         # INVENTED; goes when no number is\n";
}

/// @param part  a line that says it; empty when the file holds both
std::string pair_of(const std::string &part)
{
  return "\n[pair]\nlabel = \"my pair\"                   # what you call it\n" + part +
         "cut = \"upper off, plug cut free\"    # what has been cut so far, in your words; a plan starts "
         "from there\n"
         "# tools = [\"rule\", \"callipers\", \"scales\"]   # gauge, sensor, camera, press too, if you have "
         "them\n";
}
/// Blocks of a sheet as those of one part of a pair: [[layer]] becomes [[heel.layer]].
std::string of_part(const std::string &part, std::string text)
{
  for (const std::string block : {"[layer", "[plug", "[reading"})
    for (auto at = text.find(block); at != std::string::npos; at = text.find(block, at + block.size()))
      text.insert(at + 1, part + ".");
  return text;
}
} // namespace

std::string blank_sheet(Part part)
{
  const char *name = part == Part::heel ? "heel" : "forefoot";
  const char *title = part == Part::heel ? "my heel" : "my forefoot";
  return head_of(name, title) + bench + pair_of(fmt::format("part = \"{}\"\n", name)) + layers_note +
         (part == Part::heel ? heel_layers : forefoot_layers) + readings;
}

std::string blank_pair()
{
  return head_of("pair, heel and forefoot", "my pair") + bench + pair_of("") + layers_note + pair_note +
         "\n# The heel" + of_part("heel", heel_layers) + "\n# The forefoot" +
         of_part("forefoot", forefoot_layers) + of_part("heel", readings) + forefoot_readings;
}

std::string blank_rig()
{
  return rig;
}

std::string invented_text(const std::string &text)
{
  std::vector<int>   lines;
  std::istringstream stream(text);
  std::string        line;
  for (int number = 1; std::getline(stream, line); ++number)
    if (const auto first = line.find_first_not_of(" \t");
        first != std::string::npos && line[first] != '#' && line.find("# INVENTED") != std::string::npos)
      lines.push_back(number);
  if (lines.empty())
    return {};
  return fmt::format("{} {} still INVENTED; put your numbers in and remove the word",
                     lines.size() == 1 ? "line" : "lines", fmt::join(lines, ", "));
}
} // namespace solemech::tools
