// SPDX-License-Identifier: Apache-2.0
// The rigs: members as a run sees them, and the entries of their blocks. Names of a reference rubber count:
// they stand in the answer.
#pragma once

#include "solver/case.h"
#include "tools/language/described_materials.h"

#include <numbers>

namespace solemech::tools
{
// Tables: a row is read as one line.
// clang-format off
namespace described
{
constexpr double degree = std::numbers::pi / 180;
} // namespace described

template <>
struct Description<solver::Tup>
{
  using S = solver::Tup;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::shape, "shape")
      .as(Dimension::choice, any_value, "flat", "Shape of the striker.", "flat|sphere|spherical-ended"),
    member(&S::diameter, "diameter")
      .as(Dimension::length, above_to(0, 1), required, "Diameter of the striker."),
    member(&S::edge_radius, "edge_radius")
      .as(Dimension::length, within(0, 0.5), "1 mm", "Rounding of the edge."),
    member(&S::end_radius, "end_radius")
      .as(Dimension::length, above_to(0, 10), "", "Radius of a spherical end."),
    member(&S::half_angle, "half_angle").quietly(),
    member(&S::friction, "friction")
      .as(Dimension::number, within(0, 2), "0", "Coulomb friction of the striker on the stack."));
};

template <>
struct Description<solver::DropRig>
{
  using S = solver::DropRig;
  static constexpr std::string_view kind = "drop";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::mass, "mass").doubted(solver::DoubtedNumber::mass)
      .as(Dimension::mass, above_to(0, 1e4), required, "Mass of the drop weight."),
    member(&S::height, "height").doubted(solver::DoubtedNumber::height)
      .as(Dimension::length, above_to(0, 20), "", "Fall to first touch.", "", "energy"),
    said("energy", Dimension::energy, above_to(0, 1e5), "",
         "Energy of the fall, m g h, instead of the height; the guide still takes its share.", "", "height"),
    part(&S::tup),
    member(&S::guide_loss, "guide_loss").doubted(solver::DoubtedNumber::guide_loss)
      .as(Dimension::share, within(0, 0.5), "0 %", "Share of the energy that the guide takes on each way."),
    member(&S::hits, "hits")
      .as(Dimension::count, within(1, 1000), "1", "Recorded hits."),
    member(&S::discarded, "discarded")
      .as(Dimension::count, within(0, 1000), "0", "Hits before them that are not counted."),
    member(&S::rest, "rest")
      .as(Dimension::time, within(0, 1e6), "30 s", "Rest between hits."),
    member(&S::conditioned, "conditioned")
      .as(Dimension::flag, any_value, "false", "Repeat until the return changes by less than 0.2 points."),
    member(&S::base_mass, "base_mass")
      .as(Dimension::mass, within(0, 1e6), "0 kg", "Mass of the block under the stack; 0: rigid ground."),
    member(&S::base_stiffness, "base_stiffness")
      .as(Dimension::stiffness, within(0, 1e12), "0 N/m", "Stiffness between block and ground."),
    member(&S::base_damping, "base_damping")
      .as(Dimension::damping, within(0, 1e9), "0 N s/m", "Damping between block and ground."));
};

template <>
struct Description<solver::PressRig>
{
  using S = solver::PressRig;
  static constexpr std::string_view kind = "press";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    said("peak_force", Dimension::force, above_to(0, 1e6), "", "Greatest force, of a force-driven press.", "",
         "peak_displacement"),
    said("peak_displacement", Dimension::length, above_to(0, 0.3), "",
         "Greatest travel, of a travel-driven press.", "", "peak_force"),
    said("peak_body_weights", Dimension::number, above_to(0, 20), "", "Greatest force in body weights.", "",
         "peak_force"),
    said("body_mass", Dimension::mass, above_to(0, 300), "", "Body mass that scales body weights."),
    member(&S::control, "control"), member(&S::peak, "peak"),
    member(&S::wave, "wave")
      .as(Dimension::choice, any_value, "triangle", "Course of one cycle.", "triangle|half-sine"),
    member(&S::duration, "duration")
      .as(Dimension::time, above_to(0, 1e5), "1 s", "Duration of one cycle or pulse."),
    member(&S::cycles, "cycles").as(Dimension::count, within(1, 1000), "1", "Number of cycles."),
    member(&S::rest, "rest")
      .as(Dimension::time, within(0, 1e6), "0 s", "Rest between cycles."),
    said("history", Dimension::file, any_value, "",
         "CSV file with two columns, time in s and what history_of says; then no peak, wave and duration."),
    said("history_of", Dimension::choice, any_value, "force",
         "Second column of the history: N, mm or body weights.", "force|travel|body weights"),
    part(&S::tup),
    rows(&S::table, "table", "time", "value"));
};

template <>
struct Description<solver::HoldRig>
{
  using S = solver::HoldRig;
  static constexpr std::string_view kind = "hold";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::squeeze, "squeeze")
      .as(Dimension::share, above_to(0, 0.9), "", "Share of its height that the stack is kept squeezed by.",
          "", "load"),
    member(&S::load, "load")
      .as(Dimension::force, above_to(0, 1e5), "", "Load that stands on it, instead of a squeeze.", "",
          "squeeze"),
    member(&S::ramp, "ramp")
      .as(Dimension::time, within(0.01, 3600), "1 s", "In which squeeze or load come on, and go again."),
    member(&S::duration, "duration")
      .as(Dimension::time, above_to(0, 1e7), "22 h", "Of the hold; from memory, that of ISO 1856."),
    member(&S::rest, "rest")
      .as(Dimension::time, within(0, 1e7), "30 min",
          "From letting go to the reading of the set; from memory, that of ISO 1856."),
    part(&S::tup));
};

template <>
struct Description<materials::Gauge>
{
  using S = materials::Gauge;
  static constexpr std::size_t left_out = 3; // scale, said by the name; tip, that of the rig; foot_mass
  static constexpr auto members = std::tuple(
    member(&S::name, "scale"), member(&S::base_force, "base_force"), member(&S::force_slope, "force_slope"),
    member(&S::travel, "travel"));
};

template <>
struct Description<solver::DurometerRig>
{
  using S = solver::DurometerRig;
  static constexpr std::string_view kind = "durometer";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    said("scale", Dimension::choice, any_value, required, "Gauge that is set on.",
         "ShoreA|ShoreD|ShoreOO|AskerC"),
    part(&S::gauge),
    part(&S::tup).resolved(),
    member(&S::set_on_time, "set_on_time")
      .as(Dimension::time, within(0.01, 60), "1 s", "Time in which the tip would go all the way in."),
    member(&S::read_after, "read_after")
      .as(Dimension::time, within(0.01, 3600), "3 s",
          "From setting on to the reading: 3 s for rubber, 15 s for thermoplastics (ISO 48-4)."),
    said("tip_friction", Dimension::number, within(0.01, 2), "1",
         "Coulomb friction of the tip on the specimen: about 1 dry, 0.1 powdered or oiled; from 0.8 on it "
         "sticks."),
    member(&S::wanted, "wanted"),
    said("wanted", Dimension::hardness, above_to(0, 99), "",
         "Reading for which the modulus of a single rubber is sought."));
};

template <>
struct Description<geometry::LugOutline>
{
  using S = geometry::LugOutline;
  static constexpr std::string_view section = "lug";
  static constexpr std::size_t left_out = 2; // height and skin are the thicknesses of the layers
  static constexpr auto members = std::tuple(
    said("rubber", Dimension::text, any_value, "", "Material of the lug.", "", "hardness"),
    said("hardness", Dimension::hardness, above_to(0, 99), "",
         "Instead of a material: rubber of this hardness, its modulus good to 25 % at best."),
    said("skin_rubber", Dimension::text, any_value, "", "Material of the skin; by itself that of the lug."),
    said("pattern", Dimension::choice, any_value, "straight-bar",
         "Straight bars across the shoe, a herringbone whose arms lean from there by the arm angle, wavy "
         "bars, or single pads.", "straight-bar|herringbone|wavy-bar|pad"),
    said("arm_angle", Dimension::angle, within(0, 80 * described::degree), "",
         "Of a herringbone's arms, from across the shoe."),
    said("wave_length", Dimension::length, within(1e-3, 0.1), "", "Of a wavy bar, from crest to crest."),
    said("swing", Dimension::length, within(0, 0.02), "", "Of a wavy bar, from its middle line to a crest."),
    said("length", Dimension::length, within(0.5e-3, 0.1), "",
         "Of a pad, along the bar that it is cut from."),
    said("gap", Dimension::length, within(0, 0.1), "as across",
         "Between the ends of two pads; by itself as between their sides.", "as across"),
    member(&S::width, "width")
      .as(Dimension::length, within(0.5e-3, 0.05), required, "Across the face of the bar."),
    said("height", Dimension::length, within(0.5e-3, 0.02), required, "Of the fresh bar above its skin."),
    member(&S::spacing, "spacing")
      .as(Dimension::length, within(0.5e-3, 0.1), required, "From bar to bar, middle to middle."),
    said("skin", Dimension::length, within(0.5e-3, 0.02), "1.5 mm", "Thickness of rubber under the bar."),
    member(&S::draft, "draft")
      .as(Dimension::angle, within(0, 30 * described::degree), "3 deg", "Lean of the walls."),
    member(&S::edge_radius, "edge_radius")
      .as(Dimension::length, within(0.05e-3, 0.01), "0.25 mm", "Between wall and face."),
    member(&S::fillet, "fillet")
      .as(Dimension::length, within(0.05e-3, 0.01), "0.5 mm", "Between wall and skin."),
    said("neighbours", Dimension::choice, any_value, "alike", "Bars beside it that move alike, or none.",
         "alike|none"),
    said("conductivity", Dimension::conductivity, above_to(0, 10), "0.2 W/(m K)",
         "Of the rubber (from memory)."),
    said("specific_heat", Dimension::specific_heat, above_to(0, 1e4), "1900 J/(kg K)",
         "Of the rubber (from memory)."),
    rows(&S::worn_face, "worn_face", "x", "z"));
};

template <>
struct Description<solver::WearLife>
{
  using S = solver::WearLife;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::depth, "depth")
      .as(Dimension::length, within(0.05e-3, 0.02), required,
          "Mean over the face, at which the lug counts as worn."),
    member(&S::coefficient, "coefficient")
      .as(Dimension::wear, above_to(0, 1e-6), "0.001 mm3/(N m)",
          "Of the reference rubber on this court. User data: no source gives one for court shoes."),
    member(&S::lowest, "lowest")
      .as("coefficient_lowest", Dimension::wear, above_to(0, 1e-6), "a tenth", "Least it may be.", "a tenth"),
    member(&S::highest, "highest")
      .as("coefficient_highest", Dimension::wear, above_to(0, 1e-6), "tenfold", "Greatest it may be.",
          "tenfold"),
    said("reference", Dimension::text, any_value, "rubber-64a",
         "Rubber that the coefficient is of, and that lives are compared with."),
    member(&S::reference, "reference"), member(&S::reference_modulus, "reference_modulus"),
    member(&S::slip, "slip")
      .as(Dimension::length, within(0.01e-3, 1), "5 mm",
          "Way the lug slides in one step, under the pressure of the slide. User data."),
    member(&S::to_and_fro, "to_and_fro")
      .as(Dimension::flag, any_value, "true", "Whether it slides as often one way as the other."),
    member(&S::known_hours, "known_hours")
      .as(Dimension::time, above_to(0, 1e9), "",
          "Playing time of a worn pair of this tread and rubber, worn by this player on this court."),
    member(&S::known_depth, "known_depth")
      .as(Dimension::length, above_to(0, 0.02), "", "What that pair lost in this time."),
    said("steps_per_minute", Dimension::number, above_to(0, 200), "",
         "Sliding steps in a minute of play, of the worn pair that is known: its wear is then told for each "
         "step, and as a coefficient of this court."),
    member(&S::steps_per_second, "steps_per_second").quietly());
};

template <>
struct Description<solver::TreadZone>
{
  using S = solver::TreadZone;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::name, "name")
      .as(Dimension::text, any_value, required, "Address of the zone, once in the tread."),
    member(&S::x, "x")
      .as(Dimension::length, within(0, 0.5), required, "Of its middle, from the end of the heel."),
    member(&S::y, "y")
      .as(Dimension::length, within(-0.2, 0.2), "0 mm",
          "Of its middle, from the middle line to the outer side."),
    member(&S::length, "length").as(Dimension::length, within(2e-3, 0.5), required, "Along the foot."),
    member(&S::width, "width").as(Dimension::length, within(2e-3, 0.2), required, "Across the foot."),
    said("rubber", Dimension::text, any_value, "", "Its rubber; by itself that of the lug.", "", "hardness"),
    said("hardness", Dimension::hardness, above_to(0, 99), "", "Instead of a material, as with the lug."),
    member(&S::rubber, "rubber"),
    member(&S::bar_heading, "bars")
      .as(Dimension::angle, within(-90 * described::degree, 90 * described::degree), "0 deg",
          "Direction across its bars, from straight ahead to the outer side: 0 deg are bars across the "
          "shoe."),
    member(&S::arm_angle, "arm_angle")
      .as(Dimension::angle, within(0, 80 * described::degree), "",
          "Of a herringbone; by itself that of the lug."),
    member(&S::push_off, "push_off")
      .as(Dimension::number, within(0, 100), "1", "Parts of the load on it in a push-off."),
    member(&S::braking, "braking")
      .as(Dimension::number, within(0, 100), "1", "Parts of the load on it in braking."),
    member(&S::side_cut, "side_cut")
      .as(Dimension::number, within(0, 100), "1", "Parts of the load on it in a side cut."));
};

template <>
struct Description<solver::Tread>
{
  using S = solver::Tread;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::force, "force").as(Dimension::force, within(10, 1e4), "800 N", "On the sole."),
    member(&S::foot_length, "foot_length")
      .as(Dimension::length, within(0.1, 0.5), "290 mm", "Of the sole, from the end of the heel."),
    member(&S::foot_width, "foot_width")
      .as(Dimension::length, within(0.03, 0.2), "110 mm", "Of the sole where it is widest."),
    member(&S::ball, "ball")
      .as(Dimension::length, within(0.02, 0.5), "205 mm",
          "From the end of the heel to the ball, on which the foot turns."),
    member(&S::give, "give")
      .as(Dimension::length, within(0.1e-3, 0.03), "3 mm",
          "Way the flat, evenly loaded sole sinks under the force; tells how soon a tilted foot lifts off."),
    member(&S::n_headings, "headings")
      .as(Dimension::count, within(4, 72), "24", "Number of headings all round."),
    member(&S::lowest_moment, "lowest_moment")
      .as(Dimension::moment, within(0, 1e3), "6 N m",
          "Moment of the pivot below which a caution is due. User data: no source gives a safe one."),
    member(&S::highest_moment, "highest_moment")
      .as(Dimension::moment, within(0, 1e3), "20 N m",
          "Moment of the pivot above which a caution is due. User data: no source gives a safe one."),
    member(&S::zones, "zone"));
};

template <>
struct Description<solver::SlideRig>
{
  using S = solver::SlideRig;
  static constexpr std::string_view kind = "slide";
  static constexpr std::size_t left_out = 1; // the striker is the court: a flat as wide as the section
  static constexpr auto members = std::tuple(
    part(&S::lug), member(&S::neighbours, "neighbours"), member(&S::pad_length, "pad_length").quietly(),
    member(&S::pad_gap, "pad_gap").when([](const S &rig) { return rig.pad_length > 0; }),
    member(&S::court, "court")
      .as(Dimension::text, any_value, required, "Court by name; its friction has a band."),
    member(&S::court_state, "court_state")
      .as("state", Dimension::text, any_value, "clean", "State of its surface: clean, dusty, wet."),
    said("friction", Dimension::number, within(0, 3), "",
         "Your own measured coefficient on this court in this state; it then depends on nothing."),
    member(&S::friction, "friction"), member(&S::friction_lowest, "friction_lowest"),
    member(&S::friction_highest, "friction_highest"), member(&S::court_heat, "court_heat"),
    member(&S::lug_heat, "lug_heat"),
    member(&S::pressure, "pressure")
      .as(Dimension::pressure, within(1e3, 5e6), "200 kPa", "Force over the fresh face."),
    said("player_mass", Dimension::mass, within(20, 200), "",
         "Takes the pressure for that of a player of 80 kg and scales it to this one; without it the "
         "pressure stands as it is."),
    member(&S::speed, "speed").as(Dimension::speed, within(1e-4, 10), "0.5 m/s", "Of the slide."),
    member(&S::distance, "distance")
      .as(Dimension::length, within(0.1e-3, 1), "20 mm",
          "Greatest way; the slide ends before when it is steady."),
    member(&S::heading, "heading"),
    said("heading", Dimension::angle, within(0, 90 * described::degree), "0 deg",
         "Of the slide, from across the bar; 90 deg is along it. A herringbone is slid straight."),
    member(&S::wear, "wear"), member(&S::tread, "tread"));
};

template <>
struct Description<materials::RotaryTool>
{
  using S = materials::RotaryTool;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::sleeve_diameter, "sleeve_diameter")
      .as(Dimension::length, within(1e-3, 0.1), "13 mm", "Of a sleeve."),
    member(&S::sleeve_width, "sleeve_width")
      .as(Dimension::length, within(1e-3, 0.1), "13 mm", "Of a sleeve, on the piece."),
    member(&S::speed, "turning")
      .as("speed", Dimension::turning, above_to(0, 1000), "8000 rpm",
          "Of a sleeve; hand-held tools turn at about 3000 to 35000 rpm (common practice, no source)."),
    member(&S::force, "force")
      .as(Dimension::force, above_to(0, 100), "2 N", "Of the hand that holds a sleeve. User data."));
};

template <>
struct Description<materials::DrumBench>
{
  using S = materials::DrumBench;
  static constexpr std::size_t left_out = 2; // traverse and nominal sharpness: the standard's
  static constexpr auto members = std::tuple(
    member(&S::drum_diameter, "drum_diameter"), member(&S::speed, "turning"), member(&S::load, "load"),
    member(&S::way, "way"), member(&S::piece_diameter, "piece_diameter"));
};

template <>
struct Description<solver::AbrasionRig>
{
  using S = solver::AbrasionRig;
  static constexpr std::string_view kind = "abrasion";
  static constexpr std::size_t left_out = 2; // tool, which parts follow; striker, as wide as these
  static constexpr bool is_sleeve(const S &rig) { return rig.tool == solver::AbrasionTool::sleeve; }
  static constexpr bool is_drum(const S &rig) { return rig.tool == solver::AbrasionTool::drum; }
  static constexpr auto members = std::tuple(
    said("tool", Dimension::choice, any_value, required,
         "Sleeve on a rotary tool, or the drum of ISO 4649 with its piece of 16 mm, 10 N and 40 m.",
         "sleeve|drum"),
    member(&S::coefficient, "coefficient")
      .as(Dimension::wear, above_to(0, 1e-6), "0.375 mm3/(N m)",
          "What the abrasive takes from the reference rubber; by itself a drum loss of 150 mm3. User data; "
          "never that of a court."),
    member(&S::lowest, "lowest")
      .as("coefficient_lowest", Dimension::wear, above_to(0, 1e-6), "a third", "Least it may be.", "a third"),
    member(&S::highest, "highest")
      .as("coefficient_highest", Dimension::wear, above_to(0, 1e-6), "threefold", "Greatest it may be.",
          "threefold"),
    said("reference", Dimension::text, any_value, "rubber-64a", "Rubber that the coefficient is of."),
    member(&S::reference, "reference"), member(&S::reference_modulus, "reference_modulus"),
    member(&S::friction, "friction")
      .as(Dimension::number, above_to(0, 3), "1",
          "Of the piece on the abrasive (common practice, no source)."),
    part(&S::sleeve).when(is_sleeve),
    member(&S::seconds, "seconds").when(is_sleeve)
      .as(Dimension::time, above_to(0, 3600), "6 s",
          "That a sleeve is held in one place (common practice, no source)."),
    member(&S::found_depth, "found_depth").when(is_sleeve)
      .as(Dimension::length, above_to(0, 0.1), "",
          "What a bench found with this sleeve at these settings; gives what the abrasive takes from the "
          "outermost layer."),
    member(&S::heat_share, "heat_share").when(is_sleeve)
      .as(Dimension::share, within(0, 1), "50 %",
          "Share of the heat that goes into the piece under a sleeve. User data."),
    member(&S::conductivity, "conductivity").when(is_sleeve).as(Dimension::conductivity, above_to(0, 10),
         "0.2 W/(m K)", "Of the piece (from memory)."),
    member(&S::specific_heat, "specific_heat").when(is_sleeve)
      .as(Dimension::specific_heat, above_to(0, 1e4), "1900 J/(kg K)", "Of the piece (from memory)."),
    part(&S::drum).when(is_drum),
    member(&S::mass_lost, "mass_lost").when(is_drum)
      .as(Dimension::mass, above_to(0, 0.01), "", "By a piece on the drum, as weighed."),
    member(&S::cloth_loss, "cloth_loss").when(is_drum)
      .as(Dimension::mass, within(180e-6, 220e-6), "",
          "That the drum's cloth takes from the standard's reference rubber, as weighed."));
};
} // namespace solemech::tools
