// SPDX-License-Identifier: Apache-2.0
// Advice on measuring is common practice, no source.
#include "tools/answers/sheet/blank_sole.h"

namespace solemech::tools
{
namespace
{
constexpr const char *head =
  R"(# Every number in this file is INVENTED: replace it with yours, and remove the word together with the number.
# A line that starts with # is a remark. Remove the # to use the line.
# Write values in quotes with their unit, decimals with a point: "16.0 mm". Units: mm, cm, in; MPa, GPa.
#
# This file describes a whole left sole; a right one is its mirror image. You need callipers, a rule, a sheet of
# paper larger than the sole, and a flat table. `solemech check` names every mistake, `solemech draw` shows the sole.
#
# Before you cut a sole to see its layers:
#   Saw, knife, rotary tool: clamp the work, cut away from yourself, eye protection. No loose sleeves, and no gloves
#   near a turning blade. Dust mask and extraction: do not breathe foam, rubber or, above all, fibre dust.
#   A pressurised unit can burst: do not saw, pierce or heat it. Cut edges of a plate are sharp and splinter.
#   Local safety rules and the instructions of your tools come first.
format = 1
title = "my sole"
)";

constexpr const char *outline = R"(
# The edge in plan. Stand the sole on the paper and draw round it with an upright pencil. Draw the middle line from the
# centre of the heel, its rearmost point, to the tip of the toe. Its length is the first number. Mark 6, 16, 35 (waist),
# 50, 64, 74 (ball) and 90 % of it from the heel, and measure square to the line: to the inner edge (big toe side,
# medial) and to the outer edge (little toe side, lateral).
[outline]
length = "285 mm"                # INVENTED; rule
#           6 %      16 %     35 %     50 %     64 %     74 %     90 %
medial  = ["21 mm", "31 mm", "28 mm", "34 mm", "42 mm", "44 mm", "30 mm"]   # INVENTED
lateral = ["22 mm", "32 mm", "34 mm", "42 mm", "48 mm", "45 mm", "27 mm"]   # INVENTED
# Where the sole bends: feel the joint of the big toe and of the little toe on the foot bed, and read the distance of
# each from the heel along the middle line. Left out: 73 and 64 % of the length.
# ball_medial = "208 mm"
# ball_lateral = "182 mm"
#
# Instead of the two rows of half widths: a trace, scaled to the length. Points of the edge in order, x and y in any
# one unit, 24 or more (CSV), or a drawing with one closed path (SVG). Put the file beside this one.
# points = "trace.csv"           # or path = "trace.svg"
# toe = "up"                     # which way the toe points in it: up, right, down or left
# foot = "left"                  # "right" if you traced a right sole

# Gaps under the sole on a flat table, without load. Slide a strip of paper under it until it stops: that is where the
# gap starts. Measure the gap under the tip of the toe and under the rearmost point of the heel.
[bottom]
heel_bevel_start = "25 mm"       # INVENTED; from the heel
heel_bevel_rise = "3 mm"         # INVENTED; 0 mm: none
toe_spring_rise = "11 mm"        # INVENTED
# toe_spring_start = "185 mm"    # left out: 5 mm behind the ball
# rocker_radius = "200 mm"       # left out: one arc from the start to the tip

# Layers from the foot down to the ground. thickness: one value, or five, at the heel edge, the heel (16 % of the
# length), the waist (35 %), the ball line and the toe tip. At least 0.3 mm. On a cut sole use callipers without
# squeezing the foam; on a whole one read the side wall, and take the height of the whole stack as a check.
# material: `solemech materials` lists the names.
)";

constexpr const char *layers = R"(
[[layer]]
name = "board"                   # choose layer names freely
material = "lasting-board"       # INVENTED
thickness = "1.5 mm"             # INVENTED
inset = "4 mm"                   # INVENTED; from the edge of the sole: one value, or four at heel, waist, ball, toes
filled_by = "midsole"            # what lies round it; left out: the layer above it

[[layer]]
name = "midsole"
material = "eva-moulded-medium"  # INVENTED
thickness = ["18 mm", "19 mm", "16 mm", "10 mm", "7 mm"]   # INVENTED
# A hollow, with an air unit or without. Never cut into a unit, heat it or open it to measure.
# [[layer.pocket]]
# form = "ellipse"               # or "box", with corner = "10 mm"
# x = "46 mm"                    # its middle, from the heel
# y = "0 mm"                     # from the middle line; negative on the inner side
# length = "55 mm"
# width = "44 mm"
# floor = "4 mm"                 # foam left under it
# roof = "5 mm"                  # foam left over it
# [layer.pocket.unit]            # remove this block if it is empty
# film = "tpu-film"
# film_thickness = "0.6 mm"
# gauge_pressure = "120 kPa"

# Shank or insert plate: a layer with ends of its own. No plate in your sole: remove the block.
[[layer]]
name = "shank"
material = "glass-nylon-plate"   # INVENTED
thickness = "1.4 mm"             # INVENTED
from = "62 mm"                   # INVENTED; from the heel
to = "175 mm"                    # INVENTED
medial = "14 mm"                 # INVENTED; half widths of its own: one value, or seven as in [outline]
lateral = "15 mm"                # INVENTED
# A slot; with one that ends beyond the plate it is forked, with one that begins before it a horseshoe.
# [[layer.slot]]
# from = "150 mm"
# to = "180 mm"
# middle = "0 mm"                # one value, or two for both ends
# width = "12 mm"
# Stiffer one way than the other: moduli from bending the plate along and across. Or its plies, foot side first, in
# blocks [[layer.ply]] with modulus_along, modulus_across, shear_modulus, thickness and angle.
# [layer.flexural]
# modulus_along = "8 GPa"
# modulus_across = "6 GPa"
# shear_modulus = "2.5 GPa"

[[layer]]
name = "base"
material = "eva-firm"            # INVENTED
thickness = ["5 mm", "5 mm", "4 mm", "3.5 mm", "3 mm"]     # INVENTED

[[layer]]
name = "outsole"
material = "rubber-60a"          # INVENTED
thickness = "3.5 mm"             # INVENTED; with the pattern

# The tread: pods (islands of rubber) or grooves. Depth from the ground with the rod of the callipers. For a fine pattern
# ink the sole, print it on paper, and give the share that is black as coverage of a pod.
# [[pod]]
# form = "ellipse"
# x = "45 mm"
# length = "75 mm"
# width = "60 mm"
# depth = "2 mm"
# coverage = "70 %"
# [[groove]]
# form = "box"
# x = "195 mm"
# length = "4 mm"
# width = "70 mm"
# turned = "12 deg"
# depth = "2 mm"
)";
} // namespace

std::string blank_sole()
{
  return std::string(head) + outline + layers;
}
} // namespace solemech::tools
