// SPDX-License-Identifier: Apache-2.0
// A case and its stack: members as a run sees them, and the entries of their blocks. Label, title and note
// are for people.
#pragma once

#include "tools/language/described_rigs.h"

namespace solemech::tools
{
// Tables: a row is read as one line.
// clang-format off
template <>
struct Description<solver::AirUnit>
{
  using S = solver::AirUnit;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::diameter, "diameter")
      .as(Dimension::length, above_to(0, 1), required, "Outer diameter, film included."),
    said("film", Dimension::text, any_value, required, "Material of the film."),
    member(&S::film_thickness, "film_thickness")
      .as(Dimension::length, within(0.05e-3, 0.02), required, "Thickness of the film."),
    member(&S::film, "film"),
    member(&S::state, "state")
      .as(Dimension::choice, any_value, "sealed", "Sealed, open (punctured) or leaking.",
          "sealed|open|leaking"),
    member(&S::gauge_pressure, "gauge_pressure").doubted(solver::DoubtedNumber::gauge_pressure)
      .as(Dimension::pressure, within(0, 1e8), "0 kPa",
          "Gauge pressure, at the temperature of the test."),
    member(&S::outside_volume, "outside_volume")
      .as(Dimension::volume, within(0, 0.01), "0 cm3", "Volume of the unit outside the plug."),
    member(&S::heat_time, "heat_time")
      .as(Dimension::time, within(0, 1e9), "from fibres",
          "Time for the gas to reach the temperature of the walls.", "from fibres|adiabatic|isothermal"),
    member(&S::leak_diameter, "leak_diameter")
      .as(Dimension::length, within(0, 0.05), "0 mm", "Diameter of the hole of a leaking unit."),
    member(&S::has_fibres, "fibres")
      .as(Dimension::flag, any_value, "true",
          "Whether fibres join the two faces and keep them flat. Without fibres the unit is drawn slack and "
          "its pressure arches the stack."),
    member(&S::fibre_spacing, "fibre_spacing")
      .as(Dimension::length, above_to(0, 0.1), "3 mm", "Distance between fibres, both ways."),
    member(&S::fibre_stiffness, "fibre_stiffness")
      .as(Dimension::stiffness, above_to(0, 1e8), "20 N/mm", "Stiffness of one fibre in tension."),
    member(&S::fibre_radius, "fibre_radius")
      .as(Dimension::length, above_to(0, 5e-3), "0.01 mm", "Radius of one filament, for the heat time."),
    member(&S::filament_spacing, "filament_spacing")
      .as(Dimension::length, above_to(0, 0.1), "1 mm", "Distance between filaments, for the heat time."),
    member(&S::packed_share, "packed_share")
      .as(Dimension::share, within(0.01, 0.9), "10 %",
          "Height of the packed fibres and film, divided by that of the chamber."));
};

template <>
struct Description<solver::Layer>
{
  using S = solver::Layer;
  static constexpr std::size_t left_out = 0;
  static constexpr auto shown = std::tuple(member(&S::laid_in, "laid_in")); // by what room is made and told
  static constexpr auto members = std::tuple(
    member(&S::name, "name")
      .as(Dimension::text, any_value, required, "Name of the layer; unique in the stack."),
    said("material", Dimension::text, any_value, required,
         "Material of the layer. With an air unit: the material around the unit."),
    member(&S::material, "material"),
    member(&S::thickness, "thickness").doubted(solver::DoubtedNumber::thickness)
      .as(Dimension::length, within(0.2e-3, 0.3), required, "Thickness at rest."),
    member(&S::area_share, "area_share")
      .as(Dimension::share, within(0.01, 1), "100 %", "Share of the area that is filled, for a layer of "
                                                      "lugs."),
    member(&S::core_diameter, "core_diameter")
      .as(Dimension::length, above_to(0, 1), "", "Diameter of a core of `material` in a ring of another."),
    said("ring", Dimension::text, any_value, "", "Material outside the core diameter."),
    said("laid_in", Dimension::flag, any_value, "",
         "Whether it lies in the shoe and is not part of the sole. Default: true for a layer of an insert "
         "material and for one called insert, footbed or sockliner."),
    member(&S::ring, "ring"),
    said("unit", Dimension::block, any_value, "", "An air unit in this layer."),
    member(&S::unit, "unit"),
    member(&S::abraded, "abraded").quietly()
      .as(Dimension::wear, above_to(0, 1e-6), "",
          "What the abrasive of an abrasion bench takes off it. User data; needed for everything but "
          "rubber."));
};

template <>
struct Description<solver::Plug>
{
  using S = solver::Plug;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::section, "section")
      .as(Dimension::choice, any_value, "axisymmetric", "Round plug, or a long strip in plane strain.",
          "axisymmetric|plane-strain"),
    member(&S::radius, "radius")
      .as(Dimension::length, within(1e-3, 0.5), "in the shoe",
          "Radius, or half the width of a strip. `in the shoe`: striker radius plus stack height.",
          "in the shoe"),
    member(&S::side, "side")
      .as(Dimension::choice, any_value, "free",
          "Side wall: cut free, wrapped by a firmer wall, or with the shell left on.", "free|wrapped|shell"),
    said("side_material", Dimension::text, any_value, "", "Material of the wrapping wall."),
    member(&S::side_material,
         "side_material").when([](const S &plug) { return plug.side == solver::Side::ring; }),
    member(&S::side_thickness, "side_thickness")
      .as(Dimension::length, within(0.2e-3, 0.1), "", "Thickness of the wrapping wall."),
    member(&S::shell_stiffness, "shell_stiffness")
      .as(Dimension::stiffness_per_area, above_to(0, 1e13), "",
          "Radial stiffness per area of a shell left on."),
    member(&S::base, "base")
      .as(Dimension::choice, any_value, "bonded",
          "How the plug stands on its base. Clamped: bonded, and jaws hold the foot of its side wall.",
          "bonded|resting|clamped|sliding"),
    member(&S::base_friction, "base_friction")
      .as(Dimension::number, within(0, 2), "0.6", "Coulomb friction of a resting base."));
};

template <>
struct Description<solver::Doubt>
{
  using S = solver::Doubt;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::number, "number"), member(&S::of, "of"), member(&S::spread, "spread"),
    member(&S::together, "together"));
};

template <>
struct Description<solver::Case>
{
  using S = solver::Case;
  static constexpr std::size_t left_out = 0;
  static constexpr auto shown = std::tuple(
    member(&S::label, "label"), member(&S::title, "title"), member(&S::note, "note"),
    member(&S::invented, "invented"));
  static constexpr auto members = std::tuple(
    member(&S::layers, "layer"), member(&S::plug, "plug"),
    one_of(&S::rig, "rig", "kind"),
    member(&S::temperature, "temperature")
      .as(Dimension::temperature, within(233.15, 353.15), "23 °C", "Temperature of everything."),
    member(&S::gravity, "gravity")
      .as(Dimension::acceleration, within(0.1, 100), "9.80665 m/s2", "Gravity (standard value)."),
    member(&S::atmospheric_pressure, "atmospheric_pressure").called("air pressure")
      .as(Dimension::pressure, within(1e4, 1e6),
         "101.325 kPa", "Pressure of the surrounding air (standard atmosphere)."),
    member(&S::accuracy, "accuracy"), member(&S::doubts, "doubt"));
};
} // namespace solemech::tools
