// SPDX-License-Identifier: Apache-2.0
// Members of the rigs, as a run sees them. Names of a reference rubber count: they stand in the answer.
#pragma once

#include "solver/case.h"
#include "tools/language/described_materials.h"

namespace solemech::tools
{
template <>
struct Description<solver::Tup>
{
  using S = solver::Tup;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::shape, "shape"), member(&S::diameter, "diameter"), member(&S::edge_radius, "edge_radius"),
               member(&S::end_radius, "end_radius"), member(&S::half_angle, "half_angle").quietly(),
               member(&S::friction, "friction"));
};

template <>
struct Description<solver::DropRig>
{
  using S = solver::DropRig;
  static constexpr std::string_view kind = "drop";
  static constexpr std::size_t      left_out = 0;
  static constexpr auto members =
    std::tuple(part(&S::tup), member(&S::mass, "mass"), member(&S::height, "height"), member(&S::guide_loss, "guide_loss"),
               member(&S::hits, "hits"), member(&S::discarded, "discarded"), member(&S::rest, "rest"),
               member(&S::conditioned, "conditioned"), member(&S::base_mass, "base_mass"),
               member(&S::base_stiffness, "base_stiffness"), member(&S::base_damping, "base_damping"));
};

template <>
struct Description<solver::PressRig>
{
  using S = solver::PressRig;
  static constexpr std::string_view kind = "press";
  static constexpr std::size_t      left_out = 0;
  static constexpr auto members =
    std::tuple(part(&S::tup), member(&S::control, "control"), member(&S::wave, "wave"), member(&S::peak, "peak"),
               member(&S::duration, "duration"), member(&S::cycles, "cycles"), member(&S::rest, "rest"),
               rows(&S::table, "table", "time", "value"));
};

template <>
struct Description<materials::Gauge>
{
  using S = materials::Gauge;
  static constexpr std::size_t left_out = 3; // scale, said by the name; tip, the striker of the rig; mass of the foot
  static constexpr auto members = std::tuple(member(&S::name, "scale"), member(&S::base_force, "base_force"),
                                             member(&S::force_slope, "force_slope"), member(&S::travel, "travel"));
};

template <>
struct Description<solver::DurometerRig>
{
  using S = solver::DurometerRig;
  static constexpr std::string_view kind = "durometer";
  static constexpr std::size_t      left_out = 0;
  static constexpr auto members = std::tuple(part(&S::gauge), part(&S::tup), member(&S::set_on_time, "set_on_time"),
                                             member(&S::read_after, "read_after"), member(&S::wanted, "wanted"));
};

template <>
struct Description<geometry::LugOutline>
{
  using S = geometry::LugOutline;
  static constexpr std::size_t left_out = 2; // height and skin are the thicknesses of the layers
  static constexpr auto members =
    std::tuple(member(&S::width, "width"), member(&S::spacing, "spacing"), member(&S::draft, "draft"),
               member(&S::edge_radius, "edge_radius"), member(&S::fillet, "fillet"),
               rows(&S::worn_face, "worn_face", "x", "z"));
};

template <>
struct Description<solver::WearLife>
{
  using S = solver::WearLife;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::reference, "reference"), member(&S::reference_modulus, "reference_modulus"),
               member(&S::coefficient, "coefficient"), member(&S::lowest, "lowest"), member(&S::highest, "highest"),
               member(&S::depth, "depth"), member(&S::slip, "slip"), member(&S::to_and_fro, "to_and_fro"),
               member(&S::known_hours, "known_hours"), member(&S::known_depth, "known_depth"),
               member(&S::steps_per_second, "steps_per_second").quietly());
};

template <>
struct Description<solver::TreadZone>
{
  using S = solver::TreadZone;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::name, "name"), member(&S::rubber, "rubber"), member(&S::x, "x"), member(&S::y, "y"),
               member(&S::length, "length"), member(&S::width, "width"), member(&S::bar_heading, "bars"),
               member(&S::arm_angle, "arm_angle"), member(&S::push_off, "push_off"), member(&S::braking, "braking"),
               member(&S::side_cut, "side_cut"));
};

template <>
struct Description<solver::Tread>
{
  using S = solver::Tread;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::force, "force"), member(&S::foot_length, "foot_length"), member(&S::foot_width, "foot_width"),
               member(&S::ball, "ball"), member(&S::give, "give"), member(&S::n_headings, "headings"),
               member(&S::lowest_moment, "lowest_moment"), member(&S::highest_moment, "highest_moment"),
               member(&S::zones, "zone"));
};

template <>
struct Description<solver::SlideRig>
{
  using S = solver::SlideRig;
  static constexpr std::string_view kind = "slide";
  static constexpr std::size_t      left_out = 1; // the striker is the court: a flat as wide as the section
  static constexpr auto members = std::tuple(
    part(&S::lug), member(&S::neighbours, "neighbours"), member(&S::pad_length, "pad_length").quietly(),
    member(&S::pad_gap, "pad_gap").when([](const S &rig) { return rig.pad_length > 0; }), member(&S::court, "court"),
    member(&S::court_state, "court_state"), member(&S::friction, "friction"),
    member(&S::friction_lowest, "friction_lowest"), member(&S::friction_highest, "friction_highest"),
    member(&S::court_heat, "court_heat"), member(&S::lug_heat, "lug_heat"), member(&S::pressure, "pressure"),
    member(&S::speed, "speed"), member(&S::distance, "distance"), member(&S::heading, "heading"), member(&S::wear, "wear"),
    member(&S::tread, "tread"));
};

template <>
struct Description<materials::RotaryTool>
{
  using S = materials::RotaryTool;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::sleeve_diameter, "sleeve_diameter"), member(&S::sleeve_width, "sleeve_width"),
               member(&S::speed, "turning"), member(&S::force, "force"));
};

template <>
struct Description<materials::DrumBench>
{
  using S = materials::DrumBench;
  static constexpr std::size_t left_out = 2; // traverse and nominal sharpness are the standard's, alike for all
  static constexpr auto members =
    std::tuple(member(&S::drum_diameter, "drum_diameter"), member(&S::speed, "turning"), member(&S::load, "load"),
               member(&S::way, "way"), member(&S::piece_diameter, "piece_diameter"));
};

template <>
struct Description<solver::AbrasionRig>
{
  using S = solver::AbrasionRig;
  static constexpr std::string_view kind = "abrasion";
  static constexpr std::size_t      left_out = 2; // tool, said by what follows; striker, as wide as the sleeve or the piece
  static constexpr bool is_sleeve(const S &rig) { return rig.tool == solver::AbrasionTool::sleeve; }
  static constexpr bool is_drum(const S &rig) { return rig.tool == solver::AbrasionTool::drum; }
  static constexpr auto members = std::tuple(
    part(&S::sleeve).when(is_sleeve), member(&S::seconds, "seconds").when(is_sleeve),
    member(&S::heat_share, "heat_share").when(is_sleeve), member(&S::conductivity, "conductivity").when(is_sleeve),
    member(&S::specific_heat, "specific_heat").when(is_sleeve), member(&S::found_depth, "found_depth").when(is_sleeve),
    part(&S::drum).when(is_drum), member(&S::mass_lost, "mass_lost").when(is_drum),
    member(&S::cloth_loss, "cloth_loss").when(is_drum), member(&S::reference, "reference"),
    member(&S::reference_modulus, "reference_modulus"), member(&S::coefficient, "coefficient"),
    member(&S::lowest, "lowest"), member(&S::highest, "highest"), member(&S::friction, "friction"));
};
} // namespace solemech::tools
