// SPDX-License-Identifier: Apache-2.0
// The rigs: members as a run sees them, the blocks of a file with their entries, and what people call them.
// Names of a reference rubber count: they stand in the answer. A rig is read from its block by read_rig()
// (rig_reader.h); where members follow from what a person writes, `start` and `finish` do it before and
// after.
#pragma once

#include "solver/case.h"
#include "solver/results/catalogue.h"
#include "tools/language/described_materials.h"

#include <array>
#include <numbers>

namespace solemech::tools
{
struct RigSheet;

/// What people call a kind of rig, and the readings to take instead of one that it does not give.
struct RigWords
{
  solver::RigKind                            kind;
  std::string_view                           word;
  std::array<const solver::ReadingKind *, 5> instead;         ///< up to the first nullptr
  bool                                       on_unit = false; ///< it may stand on an air unit
};

/// The structs that have the blocks of a rig, in the order of a page; without one it is the rig alone.
template <typename... Structs>
struct BlockList
{
};

/// The ball of ISO 8307: a drop of its own.
struct Ball
{
  double diameter = 0, mass = 0, height = 0, friction = 0; ///< [m], [kg], [m], Coulomb [-]
  int    hits = 1;
  double rest = 60; ///< between hits [s]
};

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
  static constexpr Block block{
    "drop", "A falling weight of given shape.",
    "Weight on a guided rod, or instrumented falling mass.", BlockOf::bench};
  static constexpr RigWords words{
    solver::RigKind::drop, "drop",
    {&solver::catalogue.return_by_loop, &solver::catalogue.rebound_by_height,
     &solver::catalogue.peak_force, &solver::catalogue.greatest_compression}, true};
  static constexpr OneOf needed{"height", "energy", "Give height = \"400 mm\" or energy = \"5 J\""};
  using Blocks = BlockList<S, Ball>;
  static void finish(const RigSheet &sheet, S &rig);
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::mass, "mass").called("drop weight").doubted(solver::DoubtedNumber::mass)
      .as(Dimension::mass, above_to(0, 1e4), required, "Mass of the drop weight."),
    member(&S::height, "height").called("drop height").doubted(solver::DoubtedNumber::height)
      .as(Dimension::length, above_to(0, 20), "", "Fall to first touch.", "", "energy"),
    said("energy", Dimension::energy, above_to(0, 1e5), "",
         "Energy of the fall, m g h, instead of the height. The guide still takes its share.", "", "height"),
    part(&S::tup),
    member(&S::guide_loss, "guide_loss").doubted(solver::DoubtedNumber::guide_loss)
      .as(Dimension::share, within(0, 0.5), "0 %", "Share of the energy that the guide takes, down and up "
                                                   "each."),
    member(&S::hits, "hits").called("hits counted")
      .as(Dimension::count, within(1, 1000), "1", "Number of recorded hits."),
    member(&S::discarded, "discarded").called("hits before, not counted")
      .as(Dimension::count, within(0, 1000), "0", "Number of hits before them that are not counted."),
    member(&S::rest, "rest").called("rest between hits")
      .as(Dimension::time, within(0, 1e6), "30 s", "Rest between hits."),
    member(&S::conditioned, "conditioned")
      .as(Dimension::flag, any_value, "false", "Repeat hits until the return changes by less than 0.2 "
                                               "points."),
    member(&S::base_mass, "base_mass").called("mass of the base", "", "none, rigid ground")
      .as(Dimension::mass, within(0, 1e6), "0 kg", "Mass of the block under the stack; 0: rigid ground."),
    member(&S::base_stiffness, "base_stiffness")
      .as(Dimension::stiffness, within(0, 1e12), "0 N/m", "Stiffness between block and ground."),
    member(&S::base_damping, "base_damping")
      .as(Dimension::damping, within(0, 1e9), "0 N s/m", "Damping between block and ground."));
};

template <>
struct Description<Ball>
{
  using S = Ball;
  static constexpr Block block{
    "ball", "The ball of ISO 8307.",
    "Ball rebound after ISO 8307; the block under test is a layer.", BlockOf::bench};
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::diameter, "diameter").as(Dimension::length, above_to(0, 0.2), "16 mm", "Diameter of the ball."),
    member(&S::mass, "mass").as(Dimension::mass, above_to(0, 10), "16.8 g", "Mass of the ball."),
    member(&S::height, "height").as(Dimension::length, above_to(0, 5), "500 mm", "Fall to first touch."),
    member(&S::friction, "friction")
      .as(Dimension::number, within(0, 2), "0", "Coulomb friction of the ball on the block."),
    member(&S::hits, "hits").as(Dimension::count, within(1, 1000), "1", "Number of recorded hits."),
    member(&S::rest, "rest").as(Dimension::time, within(0, 1e6), "60 s", "Rest between hits."));
  static solver::DropRig as_rig(const Ball &ball);
};

template <>
struct Description<solver::PressRig>
{
  using S = solver::PressRig;
  static constexpr std::string_view kind = "press";
  static constexpr Block block{
    "press", "A press, driven by travel or force.",
    "Press cycles, pulses or a force history.", BlockOf::bench};
  static constexpr RigWords words{
    solver::RigKind::press, "press",
    {&solver::catalogue.loop_return, &solver::catalogue.peak_force,
     &solver::catalogue.greatest_compression}, true};
  static void finish(const RigSheet &sheet, S &rig);
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    said("peak_force", Dimension::force, above_to(0, 1e6), "", "Peak force of a force-driven press.", "",
         "peak_displacement"),
    said("peak_displacement", Dimension::length, above_to(0, 0.3), "",
         "Peak travel of a travel-driven press.", "", "peak_force"),
    said("peak_body_weights", Dimension::number, above_to(0, 20), "", "Peak force in body weights.", "",
         "peak_force"),
    said("body_mass", Dimension::mass, above_to(0, 300), "", "Body mass that body weights refer to."),
    member(&S::control, "control"), member(&S::peak, "peak"),
    member(&S::wave, "wave")
      .as(Dimension::choice, any_value, "triangle", "Shape of one cycle over time.", "triangle|half-sine"),
    member(&S::duration, "duration").called("duration", "ms")
      .as(Dimension::time, above_to(0, 1e5), "1 s", "Duration of one cycle or pulse."),
    member(&S::cycles, "cycles").as(Dimension::count, within(1, 1000), "1", "Number of cycles."),
    member(&S::rest, "rest").called("rest between pulses")
      .as(Dimension::time, within(0, 1e6), "0 s", "Rest between cycles."),
    said("history", Dimension::file, any_value, "",
         "CSV file with two columns: time in s, and the quantity of history_of. Replaces peak, wave and "
         "duration."),
    said("history_of", Dimension::choice, any_value, "force",
         "Second column of the history: force in N, travel in mm, or body weights.",
             "force|travel|body weights"),
    part(&S::tup),
    rows(&S::table, "table", "time", "value"));
};

template <>
struct Description<solver::HoldRig>
{
  using S = solver::HoldRig;
  static constexpr std::string_view kind = "hold";
  static constexpr Block block{
    "hold", "A squeeze or a load that is held for minutes to days.",
    "A squeeze or a load held for a long time, then a rest: creep, loss of force, set.", BlockOf::bench};
  static constexpr RigWords words{
    solver::RigKind::hold, "hold",
    {&solver::catalogue.compression_set, &solver::catalogue.force_left, &solver::catalogue.creep,
     &solver::catalogue.greatest_compression}, true};
  static constexpr OneOf needed{"squeeze", "load", "Give squeeze = \"50 %\" or load = \"300 N\""};
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::squeeze, "squeeze")
      .as(Dimension::share, above_to(0, 0.9), "", "Squeeze that is held, as a share of the stack height.",
          "", "load"),
    member(&S::load, "load")
      .as(Dimension::force, above_to(0, 1e5), "", "Load that is held, instead of a squeeze.", "",
          "squeeze"),
    member(&S::ramp, "ramp")
      .as(Dimension::time, within(0.01, 3600), "1 s", "Time in which squeeze or load is put on, and taken "
                                                      "off again."),
    member(&S::duration, "duration")
      .as(Dimension::time, above_to(0, 1e7), "22 h", "Duration of the hold. Default from ISO 1856, from "
                                                     "memory."),
    member(&S::rest, "rest")
      .as(Dimension::time, within(0, 1e7), "30 min",
          "Rest from letting go to the reading of the set. Default from ISO 1856, from memory."),
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
  static constexpr Block block{
    "durometer", "A hardness gauge pressed on the stack; layers count from the gauge down.",
    "Hardness gauge after ISO 48-4, ASTM D2240 or JIS K 7312: a tip on a spring. The plug is at least 24 "
    "mm wide.", BlockOf::bench};
  static constexpr RigWords words{
    solver::RigKind::gauge, "gauge",
    {&solver::catalogue.hardness}};
  static constexpr double least_plug = 12e-3; // way from the tip to an edge of the specimen [m], ISO 48-4
  static void start(const RigSheet &sheet, S &rig);
  static void finish(const RigSheet &sheet, S &rig);
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    said("scale", Dimension::choice, any_value, required, "Gauge that is used.",
         "ShoreA|ShoreD|ShoreOO|AskerC"),
    part(&S::gauge),
    part(&S::tup).resolved(),
    member(&S::set_on_time, "set_on_time").called("time of setting on")
      .as(Dimension::time, within(0.01, 60), "1 s", "Time in which the tip would go in fully."),
    member(&S::read_after, "read_after")
      .as(Dimension::time, within(0.01, 3600), "3 s",
          "Time from first touch to the reading: 3 s for rubber, 15 s for thermoplastics (ISO 48-4)."),
    said("tip_friction", Dimension::number, within(0.01, 2), "1",
         "Coulomb friction of the tip on the specimen: about 1 if dry, 0.1 if powdered or oiled. From 0.8 "
         "upward the tip sticks."),
    member(&S::wanted, "wanted"),
    said("wanted", Dimension::hardness, above_to(0, 99), "",
         "Target reading: the modulus of the outermost rubber that gives it is found."));
};

template <>
struct Description<geometry::LugOutline>
{
  using S = geometry::LugOutline;
  static constexpr Block block{
    "lug", "One bar of a tread with its skin, in place of the layers: for a slide.",
    "One bar of a tread, in place of [[layer]]; `skin` and `lug` are its layers in results and swaps.", BlockOf::stack};
  static constexpr std::size_t left_out = 2; // height and skin are the thicknesses of the layers
  static constexpr auto members = std::tuple(
    said("rubber", Dimension::text, any_value, "", "Material of the lug.", "", "hardness"),
    said("hardness", Dimension::hardness, above_to(0, 99), "",
         "Instead of a material: rubber of this hardness. Its modulus is good to 25 % at best."),
    said("skin_rubber", Dimension::text, any_value, "", "Material of the skin; default: same as the lug."),
    said("pattern", Dimension::choice, any_value, "straight-bar",
         "Straight bars across the shoe, a herringbone whose arms lean from there by the arm angle, wavy "
         "bars, or single pads.", "straight-bar|herringbone|wavy-bar|pad"),
    said("arm_angle", Dimension::angle, within(0, 80 * described::degree), "",
         "Angle of a herringbone's arms from across the shoe."),
    said("wave_length", Dimension::length, within(1e-3, 0.1), "", "Wavelength of a wavy bar, from crest to "
                                                                  "crest."),
    said("swing", Dimension::length, within(0, 0.02), "", "Amplitude of a wavy bar, from its middle line to "
                                                          "a crest."),
    said("length", Dimension::length, within(0.5e-3, 0.1), "",
         "Length of a pad, along the bar that it is cut from."),
    said("gap", Dimension::length, within(0, 0.1), "as across",
         "Gap between the ends of two pads; default: same as between their sides.", "as across"),
    member(&S::width, "width").called("width of the bar")
      .as(Dimension::length, within(0.5e-3, 0.05), required, "Width of the face of the bar."),
    said("height", Dimension::length, within(0.5e-3, 0.02), required, "Height of the fresh bar above its "
                                                                      "skin."),
    member(&S::spacing, "spacing").called("spacing of the bars")
      .as(Dimension::length, within(0.5e-3, 0.1), required, "Spacing from bar to bar, middle to middle."),
    said("skin", Dimension::length, within(0.5e-3, 0.02), "1.5 mm", "Thickness of the rubber under the bar."),
    member(&S::draft, "draft")
      .as(Dimension::angle, within(0, 30 * described::degree), "3 deg", "Angle at which the walls lean."),
    member(&S::edge_radius, "edge_radius").called("edge radius of the bar")
      .as(Dimension::length, within(0.05e-3, 0.01), "0.25 mm", "Radius between wall and face."),
    member(&S::fillet, "fillet").called("fillet at the root")
      .as(Dimension::length, within(0.05e-3, 0.01), "0.5 mm", "Radius between wall and skin."),
    said("neighbours", Dimension::choice, any_value, "alike", "Bars beside it that move with it, or none.",
         "alike|none"),
    said("conductivity", Dimension::conductivity, above_to(0, 10), "0.2 W/(m K)",
         "Thermal conductivity of the rubber (from memory)."),
    said("specific_heat", Dimension::specific_heat, above_to(0, 1e4), "1900 J/(kg K)",
         "Specific heat of the rubber (from memory)."),
    rows(&S::worn_face, "worn_face", "x", "z"));
};

template <>
struct Description<solver::WearLife>
{
  using S = solver::WearLife;
  static constexpr Block block{
    "wear", "Wear of the lug over thousands of slides, instead of one slide.",
    "With [lug] and [slide]: the lug is worn down by such slides. Hours are predicted only from a worn "
    "pair.", BlockOf::slide};
  static constexpr RigWords words{
    solver::RigKind::wear, "wear",
    {&solver::catalogue.life_steps, &solver::catalogue.relative_life, &solver::catalogue.worn_grip,
     &solver::catalogue.worn_edge_pressure}};
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::depth, "depth")
      .as(Dimension::length, within(0.05e-3, 0.02), required,
          "Depth lost, mean over the face, at which the lug counts as worn."),
    member(&S::coefficient, "coefficient")
      .as(Dimension::wear, above_to(0, 1e-6), "0.001 mm3/(N m)",
          "Wear coefficient of the reference rubber on this court. User data: no source gives one for court "
          "shoes."),
    member(&S::lowest, "lowest")
      .as("coefficient_lowest", Dimension::wear, above_to(0, 1e-6), "a tenth",
          "Lower bound of the coefficient.", "a tenth"),
    member(&S::highest, "highest")
      .as("coefficient_highest", Dimension::wear, above_to(0, 1e-6), "tenfold",
          "Upper bound of the coefficient.",
          "tenfold"),
    said("reference", Dimension::text, any_value, "rubber-64a",
         "Reference rubber: the coefficient belongs to it, and lives are compared with it."),
    member(&S::reference, "reference"), member(&S::reference_modulus, "reference_modulus"),
    member(&S::slip, "slip")
      .as(Dimension::length, within(0.01e-3, 1), "5 mm",
          "Distance the lug slides in one step, under the pressure of the slide. User data."),
    member(&S::to_and_fro, "to_and_fro")
      .as(Dimension::flag, any_value, "true", "Whether it slides equally often both ways."),
    member(&S::known_hours, "known_hours")
      .as(Dimension::time, above_to(0, 1e9), "",
          "Playing time of a worn pair of this tread and rubber, worn by this player on this court."),
    member(&S::known_depth, "known_depth")
      .as(Dimension::length, above_to(0, 0.02), "", "Depth that this pair lost in this time."),
    said("steps_per_minute", Dimension::number, above_to(0, 200), "",
         "Sliding steps per minute of play of the worn pair. Its wear is then reported per step, and as a "
         "coefficient for this court."),
    member(&S::steps_per_second, "steps_per_second").quietly());
};

template <>
struct Description<solver::TreadZone>
{
  using S = solver::TreadZone;
  static constexpr Block block{
    "zone", "The zones of the tread: rectangles of the sole with equal bars.",
    "One rectangle of the sole with equal bars. What no zone covers does not touch.", BlockOf::the_case, true};
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::name, "name")
      .as(Dimension::text, any_value, required, "Name of the zone; unique in the tread."),
    member(&S::x, "x")
      .as(Dimension::length, within(0, 0.5), required, "Distance of its middle from the end of the heel."),
    member(&S::y, "y")
      .as(Dimension::length, within(-0.2, 0.2), "0 mm",
          "Distance of its middle from the middle line, towards the outer side."),
    member(&S::length, "length").as(Dimension::length, within(2e-3, 0.5), required, "Length along the foot."),
    member(&S::width, "width").as(Dimension::length, within(2e-3, 0.2), required, "Width across the foot."),
    said("rubber", Dimension::text, any_value, "", "Its rubber; default: same as the lug.", "", "hardness"),
    said("hardness", Dimension::hardness, above_to(0, 99), "", "Hardness of its rubber instead of a "
                                                               "material, as for the lug."),
    member(&S::rubber, "rubber"),
    member(&S::bar_heading, "bars")
      .as(Dimension::angle, within(-90 * described::degree, 90 * described::degree), "0 deg",
          "Direction across its bars, from straight ahead to the outer side. 0 deg: bars across the shoe."),
    member(&S::arm_angle, "arm_angle")
      .as(Dimension::angle, within(0, 80 * described::degree), "",
          "Arm angle of a herringbone; default: same as the lug."),
    member(&S::push_off, "push_off")
      .as(Dimension::number, within(0, 100), "1", "Its parts of the load in a push-off."),
    member(&S::braking, "braking")
      .as(Dimension::number, within(0, 100), "1", "Its parts of the load in braking."),
    member(&S::side_cut, "side_cut")
      .as(Dimension::number, within(0, 100), "1", "Its parts of the load in a side cut."));
};

template <>
struct Description<solver::Tread>
{
  using S = solver::Tread;
  static constexpr Block block{
    "tread", "A whole sole made of zones, slid in all directions, instead of one slide.",
    "With [lug], [slide] and [[zone]]: grip of a whole sole in all directions. Pressure follows from force "
    "and zones."};
  static constexpr RigWords words{
    solver::RigKind::tread, "whole tread",
    {&solver::catalogue.grip_push_off, &solver::catalogue.grip_braking, &solver::catalogue.grip_side_cut,
     &solver::catalogue.pivot_moment}};
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::force, "force").as(Dimension::force, within(10, 1e4), "800 N", "Force on the sole."),
    member(&S::foot_length, "foot_length")
      .as(Dimension::length, within(0.1, 0.5), "290 mm", "Length of the sole, from the end of the heel."),
    member(&S::foot_width, "foot_width")
      .as(Dimension::length, within(0.03, 0.2), "110 mm", "Width of the sole at its widest."),
    member(&S::ball, "ball")
      .as(Dimension::length, within(0.02, 0.5), "205 mm",
          "Distance from the end of the heel to the ball, on which the foot turns."),
    member(&S::give, "give")
      .as(Dimension::length, within(0.1e-3, 0.03), "3 mm",
          "How far the flat, evenly loaded sole sinks under the force. Decides how soon a tilted foot lifts "
          "off."),
    member(&S::n_headings, "headings")
      .as(Dimension::count, within(4, 72), "24", "Number of headings, all round."),
    member(&S::lowest_moment, "lowest_moment")
      .as(Dimension::moment, within(0, 1e3), "6 N m",
          "Pivot moment below which a caution is shown. User data: no source gives a safe value."),
    member(&S::highest_moment, "highest_moment")
      .as(Dimension::moment, within(0, 1e3), "20 N m",
          "Pivot moment above which a caution is shown. User data: no source gives a safe value."),
    member(&S::zones, "zone"));
};

template <>
struct Description<solver::SlideRig>
{
  using S = solver::SlideRig;
  static constexpr std::string_view kind = "slide";
  static constexpr Block block{
    "slide", "A lug pressed on a court and slid over it.",
    "A slide over a court at a steady speed. Give one of rubber and hardness with the lug.", BlockOf::slide};
  static constexpr RigWords words{
    solver::RigKind::slide, "slide",
    {&solver::catalogue.effective_grip, &solver::catalogue.deflection, &solver::catalogue.edge_pressure,
     &solver::catalogue.contact_share, &solver::catalogue.trailing_lift}};
  using Blocks = BlockList<geometry::LugOutline, S, solver::WearLife, solver::Tread, solver::TreadZone>;
  static constexpr std::size_t left_out = 1; // the striker is the court: a flat as wide as the section
  static constexpr auto members = std::tuple(
    part(&S::lug), member(&S::neighbours, "neighbours"), member(&S::pad_length, "pad_length").quietly(),
    member(&S::pad_gap, "pad_gap").when([](const S &rig) { return rig.pad_length > 0; }),
    member(&S::court, "court")
      .as(Dimension::text, any_value, required, "Name of the court. Its friction has a band."),
    member(&S::court_state, "court_state")
      .as("state", Dimension::text, any_value, "clean", "State of its surface: clean, dusty, wet."),
    said("friction", Dimension::number, within(0, 3), "",
         "Your own measured friction coefficient on this court in this state; used as a constant."),
    member(&S::friction, "friction"), member(&S::friction_lowest, "friction_lowest"),
    member(&S::friction_highest, "friction_highest"), member(&S::court_heat, "court_heat"),
    member(&S::lug_heat, "lug_heat"),
    member(&S::pressure, "pressure")
      .as(Dimension::pressure, within(1e3, 5e6), "200 kPa", "Pressure: force divided by the area of the "
                                                            "fresh face."),
    said("player_mass", Dimension::mass, within(20, 200), "",
         "Body mass of the player. The pressure is then meant for 80 kg and scaled to this mass; otherwise "
         "it is used as given."),
    member(&S::speed, "speed").as(Dimension::speed, within(1e-4, 10), "0.5 m/s", "Speed of the slide."),
    member(&S::distance, "distance")
      .as(Dimension::length, within(0.1e-3, 1), "20 mm",
          "Longest distance. The slide ends earlier when it is steady."),
    member(&S::heading, "heading"),
    said("heading", Dimension::angle, within(0, 90 * described::degree), "0 deg",
         "Direction of the slide, from across the bar; 90 deg is along it. A herringbone can only slide "
         "straight."),
    member(&S::wear, "wear"), member(&S::tread, "tread"));
};

template <>
struct Description<materials::RotaryTool>
{
  using S = materials::RotaryTool;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::sleeve_diameter, "sleeve_diameter").called("sleeve")
      .as(Dimension::length, within(1e-3, 0.1), "13 mm", "Diameter of a sleeve."),
    member(&S::sleeve_width, "sleeve_width").called("width of the sleeve")
      .as(Dimension::length, within(1e-3, 0.1), "13 mm", "Width of a sleeve on the piece."),
    member(&S::speed, "turning").called("turning speed", "rpm")
      .as("speed", Dimension::turning, above_to(0, 1000), "8000 rpm",
          "Turning speed of a sleeve. Hand-held tools turn at about 3000 to 35000 rpm (common practice, no "
          "source)."),
    member(&S::force, "force").called("force of the hand")
      .as(Dimension::force, above_to(0, 100), "2 N", "Force of the hand that holds a sleeve. User data."));
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
  static constexpr Block block{
    "abrasion", "An abrasive held against a piece; layers count from the abrasive inwards.",
    "Abrasion bench. It ranks rubbers on one abrasive; alone it says nothing about a court.", BlockOf::bench};
  static constexpr RigWords words{
    solver::RigKind::abrasion, "abrasion bench",
    {&solver::catalogue.ground_depth, &solver::catalogue.ground_volume, &solver::catalogue.through_time}};
  static void start(const RigSheet &sheet, S &rig);
  static void finish(const RigSheet &sheet, S &rig);
  static constexpr std::size_t left_out = 2; // tool, which parts follow; striker, as wide as these
  static constexpr bool is_sleeve(const S &rig) { return rig.tool == solver::AbrasionTool::sleeve; }
  static constexpr bool is_drum(const S &rig) { return rig.tool == solver::AbrasionTool::drum; }
  static constexpr auto members = std::tuple(
    said("tool", Dimension::choice, any_value, required,
         "Sleeve on a rotary tool, or the drum of ISO 4649 with its piece of 16 mm, 10 N and 40 m.",
         "sleeve|drum"),
    member(&S::coefficient, "coefficient").called("loss of the reference")
      .as(Dimension::wear, above_to(0, 1e-6), "0.375 mm3/(N m)",
          "What the abrasive takes off the reference rubber; default: a drum loss of 150 mm3. User data. "
          "Never use the coefficient of a court."),
    member(&S::lowest, "lowest")
      .as("coefficient_lowest", Dimension::wear, above_to(0, 1e-6), "a third",
          "Lower bound of the coefficient.", "a third"),
    member(&S::highest, "highest")
      .as("coefficient_highest", Dimension::wear, above_to(0, 1e-6), "threefold",
          "Upper bound of the coefficient.",
          "threefold"),
    said("reference", Dimension::text, any_value, "rubber-64a", "Reference rubber, which the coefficient "
                                                                "belongs to."),
    member(&S::reference, "reference"), member(&S::reference_modulus, "reference_modulus"),
    member(&S::friction, "friction")
      .as(Dimension::number, above_to(0, 3), "1",
          "Friction of the piece on the abrasive (common practice, no source)."),
    part(&S::sleeve).when(is_sleeve),
    member(&S::seconds, "seconds").called("time held").when(is_sleeve)
      .as(Dimension::time, above_to(0, 3600), "6 s",
          "Time that a sleeve is held in one place (common practice, no source)."),
    member(&S::found_depth, "found_depth").when(is_sleeve)
      .as(Dimension::length, above_to(0, 0.1), "",
          "Depth that your bench found with this sleeve at these settings. Gives what the abrasive takes "
          "off the outermost layer."),
    member(&S::heat_share, "heat_share").when(is_sleeve)
      .as(Dimension::share, within(0, 1), "50 %",
          "Share of the heat that goes into the piece under a sleeve. User data."),
    member(&S::conductivity, "conductivity").when(is_sleeve).as(Dimension::conductivity, above_to(0, 10),
         "0.2 W/(m K)", "Thermal conductivity of the piece (from memory)."),
    member(&S::specific_heat, "specific_heat").when(is_sleeve)
      .as(Dimension::specific_heat, above_to(0, 1e4), "1900 J/(kg K)",
          "Specific heat of the piece (from memory)."),
    part(&S::drum).when(is_drum),
    member(&S::mass_lost, "mass_lost").when(is_drum)
      .as(Dimension::mass, above_to(0, 0.01), "", "Mass that a piece lost on the drum, weighed."),
    member(&S::cloth_loss, "cloth_loss").when(is_drum)
      .as(Dimension::mass, within(180e-6, 220e-6), "",
          "Mass that the drum's cloth takes off the standard's reference rubber, weighed."));
};
// clang-format on

namespace detail
{
template <typename Rig, typename Visit>
void for_each_block_of(Visit &visit)
{
  const auto each = [&]<typename... Structs>(BlockList<Structs...>) {
    (visit.template operator()<Structs>(), ...);
  };
  if constexpr (requires { typename Description<Rig>::Blocks; })
    each(typename Description<Rig>::Blocks());
  else
    each(BlockList<Rig>());
}

template <typename... Rigs, typename Visit>
void for_each_alternative(const std::variant<Rigs...> *, Visit &visit)
{
  (for_each_block_of<Rigs>(visit), ...);
}
} // namespace detail

/// Calls `visit.operator()<Struct>()` for each struct with a block of some rig, rig by rig.
template <typename Visit>
void for_each_rig_block(Visit &&visit)
{
  detail::for_each_alternative(static_cast<const solver::Rig *>(nullptr), visit);
}
} // namespace solemech::tools
