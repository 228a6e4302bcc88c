// SPDX-License-Identifier: Apache-2.0
// Members of a case and its stack, as a run sees them. Label, title and note are for people.
#pragma once

#include "tools/language/described_rigs.h"

namespace solemech::tools
{
template <>
struct Description<solver::AirUnit>
{
  using S = solver::AirUnit;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::diameter, "diameter"), member(&S::film_thickness, "film_thickness"), member(&S::film, "film"),
    member(&S::state, "state"), member(&S::gauge_pressure, "gauge_pressure"), member(&S::outside_volume, "outside_volume"),
    member(&S::heat_time, "heat_time"), member(&S::leak_diameter, "leak_diameter"), member(&S::has_fibres, "fibres"),
    member(&S::fibre_spacing, "fibre_spacing"), member(&S::fibre_stiffness, "fibre_stiffness"),
    member(&S::fibre_radius, "fibre_radius"), member(&S::filament_spacing, "filament_spacing"),
    member(&S::packed_share, "packed_share"));
};

template <>
struct Description<solver::Layer>
{
  using S = solver::Layer;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::name, "name"), member(&S::material, "material"), member(&S::thickness, "thickness"),
               member(&S::area_share, "area_share"), member(&S::core_diameter, "core_diameter"),
               member(&S::abraded, "abraded").quietly(), member(&S::ring, "ring"), member(&S::unit, "unit"));
};

template <>
struct Description<solver::Plug>
{
  using S = solver::Plug;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members =
    std::tuple(member(&S::section, "section"), member(&S::radius, "radius"), member(&S::side, "side"),
               member(&S::side_material, "side_material").when([](const S &plug) { return plug.side == solver::Side::ring; }),
               member(&S::side_thickness, "side_thickness"), member(&S::shell_stiffness, "shell_stiffness"),
               member(&S::base, "base"), member(&S::base_friction, "base_friction"));
};

template <>
struct Description<solver::Doubt>
{
  using S = solver::Doubt;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(member(&S::number, "number"), member(&S::of, "of"),
                                             member(&S::spread, "spread"), member(&S::together, "together"));
};

template <>
struct Description<solver::Case>
{
  using S = solver::Case;
  static constexpr std::size_t left_out = 3; // label, title, note
  static constexpr auto members =
    std::tuple(member(&S::layers, "layer"), member(&S::plug, "plug"), one_of(&S::rig, "rig", "kind"),
               member(&S::temperature, "temperature"), member(&S::gravity, "gravity"),
               member(&S::atmospheric_pressure, "atmospheric_pressure"), member(&S::accuracy, "accuracy"),
               member(&S::doubts, "doubt"));
};
} // namespace solemech::tools
