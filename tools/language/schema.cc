// SPDX-License-Identifier: Apache-2.0
#include "tools/language/schema.h"

#include "solver/results/catalogue.h"
#include "tools/language/material_reader.h"
#include "tools/language/reading_measure.h"

#include <numbers>

namespace solemech::tools
{
namespace
{
using namespace materials;
using D = Dimension;

constexpr double degree = std::numbers::pi / 180;

const Entry entries[] = {
  {"", "format", D::count, within(1, 1), required, "Version of the file format; this program reads 1."},
  {"", "title", D::text, any_value, "", "One line for people."},
  {"", "group", D::text, any_value, "Own cases", "Heading under which the case is listed."},
  {"", "question", D::text, any_value, "", "The question that the case answers."},
  {"", "note", D::text, any_value, "", "What else is to be said: scenario, sources, reasons."},
  {"", "stack", D::text, any_value, "", "Stack file to use, by name or path.", "", "layer"},
  {"", "rig", D::text, any_value, "",
   "Rig file to use, by name or path; a block here changes single entries of it."},
  {"", "accuracy", D::share, within(1e-4, 0.1), "1 %",
   "Wished relative accuracy of the readings; mesh and step follow."},
  {"", "layer", D::blocks, any_value, "",
   "The layers of the stack, foot side first (under a gauge: from the gauge down).", "", "stack"},
  {"", "material", D::blocks, any_value, "", "Own materials, or changed ones of the library."},
  {"", "plug", D::block, any_value, "", "The round plug of the stack under the striker."},
  {"", "drop", D::block, any_value, "", "A falling weight of given shape."},
  {"", "ball", D::block, any_value, "", "The ball of ISO 8307."},
  {"", "press", D::block, any_value, "", "A press, driven by travel or force."},
  {"", "durometer", D::block, any_value, "",
   "A hardness gauge set onto the stack; layers count from the gauge down."},
  {"", "lug", D::block, any_value, "",
   "One bar of a tread with its skin, in place of the layers: for a slide."},
  {"", "slide", D::block, any_value, "", "A lug pressed on a court and slid over it."},
  {"", "wear", D::block, any_value, "", "What thousands of slides do to the lug, instead of one slide."},
  {"", "abrasion", D::block, any_value, "",
   "An abrasive held on a piece; layers count from the abrasive inwards."},
  {"", "tread", D::block, any_value, "",
   "A whole sole of zones, slid at headings all round, instead of one slide."},
  {"", "zone", D::blocks, any_value, "", "The zones of the tread: bars alike on a rectangle of the sole."},
  {"", "surroundings", D::block, any_value, "", "Temperature, gravity, air."},
  {"", "change", D::block, any_value, "",
   "Changes to the stack and rig files, e.g. core.thickness = \"18 mm\"."},
  {"", "series", D::blocks, any_value, "", "Entries to vary; several series give every combination."},
  {"", "settled", D::blocks, any_value, "",
   "Numbers that are known with a doubt only; every reading then carries a band. A settled stack has them."},
  {"", "expect", D::blocks, any_value, "", "Ranges in which readings are expected, with their source."},
  {"", "lesson", D::block, any_value, "",
   "A question to guess first, answered from the numbers of the runs."},

  {"layer", "name", D::text, any_value, required, "Address of the layer, once in the stack."},
  {"layer", "material", D::text, any_value, required,
   "Material of the layer; round an air unit: what fills the layer."},
  {"layer", "thickness", D::length, within(0.2e-3, 0.3), required, "Thickness at rest."},
  {"layer", "area_share", D::share, within(0.01, 1), "100 %", "Share of the area that is there, for lugs."},
  {"layer", "core_diameter", D::length, above_to(0, 1), "",
   "Diameter of a core of `material` in a ring of another."},
  {"layer", "ring", D::text, any_value, "", "Material outside the core diameter."},
  {"layer", "unit", D::block, any_value, "", "An air unit in this layer."},
  {"layer", "abraded", D::wear, above_to(0, 1e-6), "",
   "What the abrasive of an abrasion bench takes from it. User data, needed of all but rubber."},

  {"layer.unit", "diameter", D::length, above_to(0, 1), required, "Outer diameter, film included."},
  {"layer.unit", "film", D::text, any_value, required, "Material of the film."},
  {"layer.unit", "film_thickness", D::length, within(0.05e-3, 0.02), required, "Thickness of the film."},
  {"layer.unit", "state", D::choice, any_value, "sealed", "Sealed, open (punctured) or leaking.",
   "sealed|open|leaking"},
  {"layer.unit", "gauge_pressure", D::pressure, within(0, 1e8), "0 kPa",
   "Pressure above the surroundings, at the temperature of the test."},
  {"layer.unit", "outside_volume", D::volume, within(0, 0.01), "0 cm3",
   "Volume of the unit outside the plug."},
  {"layer.unit", "heat_time", D::time, within(0, 1e9), "from fibres",
   "Time in which the gas takes the temperature of the walls.", "from fibres|adiabatic|isothermal"},
  {"layer.unit", "leak_diameter", D::length, within(0, 0.05), "0 mm",
   "Diameter of the hole of a leaking unit."},
  {"layer.unit", "fibres", D::flag, any_value, "true",
   "Whether fibres join the two faces and keep them flat. Without them the unit is drawn slack; its pressure arches "
   "the stack."},
  {"layer.unit", "fibre_spacing", D::length, above_to(0, 0.1), "3 mm", "Distance between fibres, both ways."},
  {"layer.unit", "fibre_stiffness", D::stiffness, above_to(0, 1e8), "20 N/mm",
   "Stiffness of one fibre in tension."},
  {"layer.unit", "fibre_radius", D::length, above_to(0, 5e-3), "0.01 mm",
   "Radius of one filament, for the heat time."},
  {"layer.unit", "filament_spacing", D::length, above_to(0, 0.1), "1 mm",
   "Distance between filaments, for the heat time."},
  {"layer.unit", "packed_share", D::share, within(0.01, 0.9), "10 %",
   "Height of the packed fibres and film over that of the chamber."},

  {"plug", "section", D::choice, any_value, "axisymmetric", "Round plug, or a long strip in plane strain.",
   "axisymmetric|plane-strain"},
  {"plug", "radius", D::length, within(1e-3, 0.5), "in the shoe",
   "Radius (half width of a strip); `in the shoe` is striker radius plus stack height.", "in the shoe"},
  {"plug", "side", D::choice, any_value, "free",
   "Side wall: cut free, wrapped by a firmer wall, or shell left on.", "free|wrapped|shell"},
  {"plug", "side_material", D::text, any_value, "", "Material of the wrapping wall."},
  {"plug", "side_thickness", D::length, within(0.2e-3, 0.1), "", "Thickness of the wrapping wall."},
  {"plug", "shell_stiffness", D::stiffness_per_area, above_to(0, 1e13), "",
   "Radial stiffness per area of a shell left on."},
  {"plug", "base", D::choice, any_value, "bonded", "How the plug stands on its base. Clamped: bonded, and jaws hold the foot of its side.",
   "bonded|resting|clamped|sliding"},
  {"plug", "base_friction", D::number, within(0, 2), "0.6", "Coulomb friction of a resting base."},

  {"drop", "mass", D::mass, above_to(0, 1e4), required, "Mass of the drop weight."},
  {"drop", "height", D::length, above_to(0, 20), "", "Fall to first touch.", "", "energy"},
  {"drop", "energy", D::energy, above_to(0, 1e5), "",
   "Energy of the fall, m g h, instead of the height; the guide still takes its share.", "", "height"},
  {"drop", "shape", D::choice, any_value, "flat", "Shape of the striker.", "flat|sphere|spherical-ended"},
  {"drop", "diameter", D::length, above_to(0, 1), required, "Diameter of the striker."},
  {"drop", "edge_radius", D::length, within(0, 0.5), "1 mm", "Rounding of the edge."},
  {"drop", "end_radius", D::length, above_to(0, 10), "", "Radius of a spherical end."},
  {"drop", "friction", D::number, within(0, 2), "0", "Coulomb friction of the striker on the stack."},
  {"drop", "guide_loss", D::share, within(0, 0.5), "0 %",
   "Share of the energy that the guide takes on each way."},
  {"drop", "hits", D::count, within(1, 1000), "1", "Recorded hits."},
  {"drop", "discarded", D::count, within(0, 1000), "0", "Hits before them that are not counted."},
  {"drop", "rest", D::time, within(0, 1e6), "30 s", "Rest between hits."},
  {"drop", "conditioned", D::flag, any_value, "false",
   "Repeat until the return changes by less than 0.2 points."},
  {"drop", "base_mass", D::mass, within(0, 1e6), "0 kg",
   "Mass of the block under the stack; 0: rigid ground."},
  {"drop", "base_stiffness", D::stiffness, within(0, 1e12), "0 N/m", "Stiffness between block and ground."},
  {"drop", "base_damping", D::damping, within(0, 1e9), "0 N s/m", "Damping between block and ground."},

  {"ball", "diameter", D::length, above_to(0, 0.2), "16 mm", "Diameter of the ball."},
  {"ball", "mass", D::mass, above_to(0, 10), "16.8 g", "Mass of the ball."},
  {"ball", "height", D::length, above_to(0, 5), "500 mm", "Fall to first touch."},
  {"ball", "friction", D::number, within(0, 2), "0", "Coulomb friction of the ball on the block."},
  {"ball", "hits", D::count, within(1, 1000), "1", "Recorded hits."},
  {"ball", "rest", D::time, within(0, 1e6), "60 s", "Rest between hits."},

  {"press", "peak_force", D::force, above_to(0, 1e6), "", "Greatest force, of a force-driven press.", "",
   "peak_displacement"},
  {"press", "peak_displacement", D::length, above_to(0, 0.3), "",
   "Greatest travel, of a travel-driven press.", "", "peak_force"},
  {"press", "peak_body_weights", D::number, above_to(0, 20), "", "Greatest force in body weights.", "",
   "peak_force"},
  {"press", "body_mass", D::mass, above_to(0, 300), "", "Body mass that scales body weights."},
  {"press", "wave", D::choice, any_value, "triangle", "Course of one cycle.", "triangle|half-sine"},
  {"press", "duration", D::time, above_to(0, 1e5), "1 s", "Duration of one cycle or pulse."},
  {"press", "cycles", D::count, within(1, 1000), "1", "Number of cycles."},
  {"press", "rest", D::time, within(0, 1e6), "0 s", "Rest between cycles."},
  {"press", "history", D::file, any_value, "",
   "CSV file with two columns, time in s and what history_of says; then no peak, wave and duration."},
  {"press", "history_of", D::choice, any_value, "force",
   "Second column of the history: N, mm or body weights.", "force|travel|body weights"},
  {"press", "shape", D::choice, any_value, "flat", "Shape of the striker.", "flat|sphere|spherical-ended"},
  {"press", "diameter", D::length, above_to(0, 1), required, "Diameter of the striker."},
  {"press", "edge_radius", D::length, within(0, 0.5), "1 mm", "Rounding of the edge."},
  {"press", "end_radius", D::length, above_to(0, 10), "", "Radius of a spherical end."},
  {"press", "friction", D::number, within(0, 2), "0", "Coulomb friction of the striker on the stack."},

  {"durometer", "scale", D::choice, any_value, required, "Gauge that is set on.",
   "ShoreA|ShoreD|ShoreOO|AskerC"},
  {"durometer", "set_on_time", D::time, within(0.01, 60), "1 s",
   "Time in which the tip would go all the way in."},
  {"durometer", "read_after", D::time, within(0.01, 3600), "3 s",
   "From setting on to the reading: 3 s for rubber, 15 s for thermoplastics (ISO 48-4)."},
  {"durometer", "tip_friction", D::number, within(0.01, 2), "1",
   "Coulomb friction of the tip on the specimen: about 1 dry, 0.1 powdered or oiled; from 0.8 on it sticks."},
  {"durometer", "wanted", D::hardness, above_to(0, 99), "",
   "Reading for which the modulus of a single rubber is sought."},

  {"lug", "rubber", D::text, any_value, "", "Material of the lug.", "", "hardness"},
  {"lug", "hardness", D::hardness, above_to(0, 99), "",
   "Instead of a material: rubber of this hardness, its modulus good to 25 % at best."},
  {"lug", "skin_rubber", D::text, any_value, "", "Material of the skin; by itself that of the lug."},
  {"lug", "pattern", D::choice, any_value, "straight-bar",
   "Straight bars across the shoe, a herringbone whose arms lean from there by the arm angle, wavy bars, or "
   "single pads.",
   "straight-bar|herringbone|wavy-bar|pad"},
  {"lug", "arm_angle", D::angle, within(0, 80 * degree), "",
   "Of a herringbone's arms, from across the shoe."},
  {"lug", "wave_length", D::length, within(1e-3, 0.1), "", "Of a wavy bar, from crest to crest."},
  {"lug", "swing", D::length, within(0, 0.02), "", "Of a wavy bar, from its middle line to a crest."},
  {"lug", "length", D::length, within(0.5e-3, 0.1), "", "Of a pad, along the bar that it is cut from."},
  {"lug", "gap", D::length, within(0, 0.1), "as across",
   "Between the ends of two pads; by itself as between their sides.", "as across"},
  {"lug", "width", D::length, within(0.5e-3, 0.05), required, "Across the face of the bar."},
  {"lug", "height", D::length, within(0.5e-3, 0.02), required, "Of the fresh bar above its skin."},
  {"lug", "spacing", D::length, within(0.5e-3, 0.1), required, "From bar to bar, middle to middle."},
  {"lug", "skin", D::length, within(0.5e-3, 0.02), "1.5 mm", "Thickness of rubber under the bar."},
  {"lug", "draft", D::angle, within(0, 30 * degree), "3 deg", "Lean of the walls."},
  {"lug", "edge_radius", D::length, within(0.05e-3, 0.01), "0.25 mm", "Between wall and face."},
  {"lug", "fillet", D::length, within(0.05e-3, 0.01), "0.5 mm", "Between wall and skin."},
  {"lug", "neighbours", D::choice, any_value, "alike", "Bars beside it that move alike, or none.",
   "alike|none"},
  {"lug", "conductivity", D::conductivity, above_to(0, 10), "0.2 W/(m K)", "Of the rubber (from memory)."},
  {"lug", "specific_heat", D::specific_heat, above_to(0, 1e4), "1900 J/(kg K)",
   "Of the rubber (from memory)."},

  {"slide", "court", D::text, any_value, required, "Court by name; its friction has a band."},
  {"slide", "state", D::text, any_value, "clean", "State of its surface: clean, dusty, wet."},
  {"slide", "friction", D::number, within(0, 3), "",
   "Your own measured coefficient on this court in this state; it then depends on nothing."},
  {"slide", "pressure", D::pressure, within(1e3, 5e6), "200 kPa", "Force over the fresh face."},
  {"slide", "player_mass", D::mass, within(20, 200), "",
   "Takes the pressure for that of a player of 80 kg and scales it to this one; without it the pressure "
   "stands as it is."},
  {"slide", "speed", D::speed, within(1e-4, 10), "0.5 m/s", "Of the slide."},
  {"slide", "distance", D::length, within(0.1e-3, 1), "20 mm",
   "Greatest way; the slide ends before when it is steady."},
  {"slide", "heading", D::angle, within(0, 90 * degree), "0 deg",
   "Of the slide, from across the bar; 90 deg is along it. A herringbone is slid straight."},

  {"wear", "depth", D::length, within(0.05e-3, 0.02), required,
   "Mean over the face, at which the lug counts as worn."},
  {"wear", "coefficient", D::wear, above_to(0, 1e-6), "0.001 mm3/(N m)",
   "Of the reference rubber on this court. User data: no source gives one for court shoes."},
  {"wear", "coefficient_lowest", D::wear, above_to(0, 1e-6), "a tenth", "Least it may be.", "a tenth"},
  {"wear", "coefficient_highest", D::wear, above_to(0, 1e-6), "tenfold", "Greatest it may be.", "tenfold"},
  {"wear", "reference", D::text, any_value, "rubber-64a",
   "Rubber that the coefficient is of, and that lives are compared with."},
  {"wear", "slip", D::length, within(0.01e-3, 1), "5 mm",
   "Way the lug slides in one step, under the pressure of the slide. User data."},
  {"wear", "to_and_fro", D::flag, any_value, "true", "Whether it slides as often one way as the other."},
  {"wear", "known_hours", D::time, above_to(0, 1e9), "",
   "Playing time of a worn pair of this tread and rubber, worn by this player on this court."},
  {"wear", "known_depth", D::length, above_to(0, 0.02), "", "What that pair lost in this time."},
  {"wear", "steps_per_minute", D::number, above_to(0, 200), "",
   "Sliding steps in a minute of play, of the worn pair that is known: its wear is then told for each step, "
   "and as a coefficient of this court."},

  {"abrasion", "tool", D::choice, any_value, required,
   "Sleeve on a rotary tool, or the drum of ISO 4649 with its piece of 16 mm, 10 N and 40 m.", "sleeve|drum"},
  {"abrasion", "coefficient", D::wear, above_to(0, 1e-6), "0.375 mm3/(N m)",
   "What the abrasive takes from the reference rubber; by itself a drum loss of 150 mm3. User data; never "
   "that of a court."},
  {"abrasion", "coefficient_lowest", D::wear, above_to(0, 1e-6), "a third", "Least it may be.", "a third"},
  {"abrasion", "coefficient_highest", D::wear, above_to(0, 1e-6), "threefold", "Greatest it may be.",
   "threefold"},
  {"abrasion", "reference", D::text, any_value, "rubber-64a", "Rubber that the coefficient is of."},
  {"abrasion", "friction", D::number, above_to(0, 3), "1",
   "Of the piece on the abrasive (common practice, no source)."},
  {"abrasion", "sleeve_diameter", D::length, within(1e-3, 0.1), "13 mm", "Of a sleeve."},
  {"abrasion", "sleeve_width", D::length, within(1e-3, 0.1), "13 mm", "Of a sleeve, on the piece."},
  {"abrasion", "speed", D::turning, above_to(0, 1000), "8000 rpm",
   "Of a sleeve; hand-held tools turn at about 3000 to 35000 rpm (common practice, no source)."},
  {"abrasion", "force", D::force, above_to(0, 100), "2 N", "Of the hand that holds a sleeve. User data."},
  {"abrasion", "seconds", D::time, above_to(0, 3600), "6 s",
   "That a sleeve is held in one place (common practice, no source)."},
  {"abrasion", "found_depth", D::length, above_to(0, 0.1), "",
   "What a bench found with this sleeve at these settings; gives what the abrasive takes from the outermost "
   "layer."},
  {"abrasion", "heat_share", D::share, within(0, 1), "50 %",
   "Share of the heat that goes into the piece under a sleeve. User data."},
  {"abrasion", "conductivity", D::conductivity, above_to(0, 10), "0.2 W/(m K)",
   "Of the piece (from memory)."},
  {"abrasion", "specific_heat", D::specific_heat, above_to(0, 1e4), "1900 J/(kg K)",
   "Of the piece (from memory)."},
  {"abrasion", "mass_lost", D::mass, above_to(0, 0.01), "", "By a piece on the drum, as weighed."},
  {"abrasion", "cloth_loss", D::mass, within(180e-6, 220e-6), "",
   "That the drum's cloth takes from the standard's reference rubber, as weighed."},

  {"tread", "force", D::force, within(10, 1e4), "800 N", "On the sole."},
  {"tread", "foot_length", D::length, within(0.1, 0.5), "290 mm", "Of the sole, from the end of the heel."},
  {"tread", "foot_width", D::length, within(0.03, 0.2), "110 mm", "Of the sole where it is widest."},
  {"tread", "ball", D::length, within(0.02, 0.5), "205 mm",
   "From the end of the heel to the ball, on which the foot turns."},
  {"tread", "give", D::length, within(0.1e-3, 0.03), "3 mm",
   "Way the flat, evenly loaded sole sinks under the force; tells how soon a tilted foot lifts off."},
  {"tread", "headings", D::count, within(4, 72), "24", "Number of headings all round."},
  {"tread", "lowest_moment", D::moment, within(0, 1e3), "6 N m",
   "Moment of the pivot below which a caution is due. User data: no source gives a safe one."},
  {"tread", "highest_moment", D::moment, within(0, 1e3), "20 N m",
   "Moment of the pivot above which a caution is due. User data: no source gives a safe one."},

  {"zone", "name", D::text, any_value, required, "Address of the zone, once in the tread."},
  {"zone", "x", D::length, within(0, 0.5), required, "Of its middle, from the end of the heel."},
  {"zone", "y", D::length, within(-0.2, 0.2), "0 mm",
   "Of its middle, from the middle line to the outer side."},
  {"zone", "length", D::length, within(2e-3, 0.5), required, "Along the foot."},
  {"zone", "width", D::length, within(2e-3, 0.2), required, "Across the foot."},
  {"zone", "rubber", D::text, any_value, "", "Its rubber; by itself that of the lug.", "", "hardness"},
  {"zone", "hardness", D::hardness, above_to(0, 99), "", "Instead of a material, as with the lug."},
  {"zone", "bars", D::angle, within(-90 * degree, 90 * degree), "0 deg",
   "Direction across its bars, from straight ahead to the outer side: 0 deg are bars across the shoe."},
  {"zone", "arm_angle", D::angle, within(0, 80 * degree), "", "Of a herringbone; by itself that of the lug."},
  {"zone", "push_off", D::number, within(0, 100), "1", "Parts of the load on it in a push-off."},
  {"zone", "braking", D::number, within(0, 100), "1", "Parts of the load on it in braking."},
  {"zone", "side_cut", D::number, within(0, 100), "1", "Parts of the load on it in a side cut."},

  {"surroundings", "temperature", D::temperature, within(233.15, 353.15), "23 °C",
   "Temperature of everything."},
  {"surroundings", "gravity", D::acceleration, within(0.1, 100), "9.80665 m/s2", "Gravity (standard value)."},
  {"surroundings", "atmospheric_pressure", D::pressure, within(1e4, 1e6), "101.325 kPa",
   "Pressure of the surrounding air (standard atmosphere)."},

  {"series", "vary", D::text, any_value, required,
   "Entry to vary, addressed as on the command line, or stack, or rig."},
  {"series", "values", D::list, any_value, required, "Its values, one case each."},
  {"series", "labels", D::list, any_value, "", "Endings of the case labels; by itself the values."},

  {"settled", "number", D::choice, any_value, required, "What is doubted.",
   "stiffness|loss|density|thickness|gauge pressure|drop height|drop weight|guide loss"},
  {"settled", "of", D::text, any_value, required,
   "Of which material (stiffness, loss, density) or layer (thickness, gauge pressure), or \"rig\" (the others). One "
   "that is not in the stack has no effect."},
  {"settled", "doubt", D::share, within(1e-4, 9), required,
   "Half the band of nine cases in ten, as a share of the value."},
  {"settled", "together", D::list, any_value, "none",
   "How it goes with each [[settled]] number above: 1 up and down together, 0 each for itself, -1 one up, "
   "the other down."},

  {"expect", "label", D::text, any_value, "",
   "Case of the series that is meant (label or its ending); else all."},
  {"expect", "source", D::text, any_value, required, "Where the ranges come from."},
  {"expect", "outside", D::text, any_value, "",
   "Readings that fall outside, by name, and the reason: \"contact_time: ...; peak_force: ...\"."},

  {"lesson", "number", D::count, within(1, 1000), required, "Place in the list of lessons."},
  {"lesson", "measure", D::text, any_value, "",
   "The number that decides: `reading:run`, `a - b`, `a / b` or `a / b - 1`. Without it each choice has one.",
   "", "winner"},
  {"lesson", "winner", D::choice, any_value, "greatest",
   "Which choice is right when each has a measure: that of the greatest or of the least size.",
   "greatest|least", "measure"},
  {"lesson", "close", D::share, within(0, 0.5), "0 %",
   "The two foremost sizes count as alike when they differ by less; right is then the choice without "
   "measure."},
  {"lesson", "choice", D::blocks, any_value, "", "The choices, two to six."},
  {"lesson", "explanation", D::list, any_value, required,
   "Paragraphs said with every answer; numbers go in as `{reading:run}`, with their sign as `{+a - b}`."},
  {"lesson", "readings", D::list, any_value, required, "Readings of the table to fill in."},
  {"lesson", "source", D::text, any_value, required,
   "Where the finding stands outside of this program, or \"common practice, no source\"."},

  {"lesson.choice", "text", D::text, any_value, required, "The choice as it is asked."},
  {"lesson.choice", "below", D::text, any_value, "",
   "Right when the measure is below this value and not below that of the choice before; none on the last."},
  {"lesson.choice", "measure", D::text, any_value, "", "Its own number, when the lesson has none."},
  {"lesson.choice", "because", D::text, any_value, required,
   "Said when this is the right choice; numbers as in the explanation."},
};

const Section sections[] = {
  {"", "Top of the file", "What the case is, and which stack and rig it uses."},
  {"layer", "[[layer]]", "One block per layer, foot side first."},
  {"layer.unit", "[layer.unit]", "An air unit inside the layer above this block."},
  {"plug", "[plug]", "The piece of the stack that is modelled."},
  {"drop", "[drop]", "Weight on a guided rod, or instrumented falling mass."},
  {"ball", "[ball]", "Ball rebound after ISO 8307; the block under test is a layer."},
  {"press", "[press]", "Press cycles, pulses or a force history."},
  {"durometer", "[durometer]",
   "Hardness gauge after ISO 48-4, ASTM D2240 or JIS K 7312: a tip on a spring. The plug is at least 24 mm "
   "wide."},
  {"lug", "[lug]",
   "One bar of a tread, in place of [[layer]]; `skin` and `lug` are its layers in results and swaps."},
  {"slide", "[slide]",
   "A slide over a court at a steady speed. Give one of rubber and hardness with the lug."},
  {"wear", "[wear]",
   "With [lug] and [slide]: the lug is worn down by slides like that one. Hours are told only from a worn "
   "pair."},
  {"abrasion", "[abrasion]",
   "Abrasion bench. What an abrasive takes says nothing of a court by itself: it ranks rubbers on that "
   "abrasive."},
  {"tread", "[tread]",
   "With [lug], [slide] and [[zone]]: grip of a whole sole at headings all round. Pressure follows from "
   "force and zones."},
  {"zone", "[[zone]]", "One rectangle of the sole with bars alike; what no zone covers does not touch."},
  {"surroundings", "[surroundings]", "Where the test is done."},
  {"series", "[[series]]", "Several cases from one file."},
  {"settled", "[[settled]]",
   "What is known with a doubt only, one block a number. `run SHEET` writes them into settled.toml; readings "
   "then carry a band."},
  {"expect", "[[expect]]", "Ranges, each a list of two: `peak_force = [\"1.20 kN\", \"1.45 kN\"]`."},
  {"lesson", "[lesson]",
   "A teaching case: `solemech learn`. Which choice is right is found from the runs, never written down."},
  {"lesson.choice", "[[lesson.choice]]", "One choice of the lesson."},
  {"material", "[[material]]",
   "Own materials and changed library materials, by the same entries as the library."},
  {"material.network", "network = [{...}]", "Terms of the foam network."},
  {"material.relaxing", "relaxing = [{...}]", "Relaxing branches."},
  {"material.slipping", "slipping = [{...}]", "Slipping branches."},
};
} // namespace

std::span<const Entry> case_entries()
{
  static const std::vector<Entry> all = [] {
    std::vector<Entry> list(std::begin(entries), std::end(entries));
    for (const auto &kind : solver::all_readings())
      if (!kind.expected.empty())
        list.push_back({"expect", kind.name, dimension_of(kind), any_value, "", kind.expected});
    const auto         of_materials = material_entries();
    list.insert(list.end(), of_materials.begin(), of_materials.end());
    return list;
  }();
  return all;
}

const Entry *find_entry(std::string_view section, std::string_view name)
{
  for (const auto &entry : case_entries())
    if (entry.section == section && entry.name == name)
      return &entry;
  return nullptr;
}

std::vector<std::string> entry_names(std::string_view section)
{
  std::vector<std::string> names;
  for (const auto &entry : case_entries())
    if (entry.section == section)
      names.emplace_back(entry.name);
  return names;
}

std::span<const Section> case_sections()
{
  return sections;
}
} // namespace solemech::tools
