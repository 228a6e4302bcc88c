// SPDX-License-Identifier: Apache-2.0
// Plugs that several geometry tests mesh. The layered ones follow an invented pair of shoes.
#pragma once

#include "geometry/stack_outline.h"

namespace solemech::tests
{
/// Foam cylinder of 40 mm radius and 25 mm height under a striker of 45 mm diameter with 2 mm edges.
inline geometry::PlugOutline foam_cylinder()
{
  return {.strips = {{.thickness = 25e-3, .zones = {{40e-3, 0}}, .chamber = {}}},
          .radius = 40e-3,
          .part_names = {"foam"},
          .tup_contact_radius = 22.5e-3,
          .tup_edge_radius = 2e-3};
}

/// Lugs, skin, firm foam, soft core of 54 mm diameter with a firm ring, board.
inline geometry::PlugOutline heel_plug()
{
  const double R = 42e-3;
  return {.strips = {{.thickness = 2.4e-3, .zones = {{R, 0}}, .chamber = {}},
                     {.thickness = 2.0e-3, .zones = {{R, 1}}, .chamber = {}},
                     {.thickness = 7.0e-3, .zones = {{R, 2}}, .chamber = {}},
                     {.thickness = 16e-3, .zones = {{27e-3, 3}, {R, 2}}, .chamber = {}},
                     {.thickness = 1.5e-3, .zones = {{R, 4}}, .chamber = {}}},
          .radius = R,
          .part_names = {"lugs", "skin", "firm", "core", "board"},
          .tup_contact_radius = 22.5e-3,
          .tup_edge_radius = 2e-3};
}

/// Lugs, skin, base, plate, air unit of 62 mm diameter in a ring, topper, board.
inline geometry::PlugOutline forefoot_plug()
{
  const double R = 42e-3;
  return {.strips = {{.thickness = 2.2e-3, .zones = {{R, 0}}, .chamber = {}},
                     {.thickness = 1.8e-3, .zones = {{R, 1}}, .chamber = {}},
                     {.thickness = 4.5e-3, .zones = {{R, 2}}, .chamber = {}},
                     {.thickness = 1.2e-3, .zones = {{R, 3}}, .chamber = {}},
                     {.thickness = 8.0e-3,
                      .zones = {{R, 2}},
                      .chamber = geometry::AirUnitOutline{31e-3, 0.6e-3, 5}},
                     {.thickness = 4.0e-3, .zones = {{R, 2}}, .chamber = {}},
                     {.thickness = 1.5e-3, .zones = {{R, 4}}, .chamber = {}}},
          .radius = R,
          .part_names = {"lugs", "skin", "firm", "plate", "board", "film"},
          .tup_contact_radius = 22.5e-3,
          .tup_edge_radius = 2e-3};
}

/// Two air units of different diameter and film directly on top of each other, topper, wrapped side.
inline geometry::PlugOutline two_unit_plug()
{
  const double R = 40e-3;
  return {
    .strips = {{.thickness = 8e-3, .zones = {{R, 0}}, .chamber = geometry::AirUnitOutline{31e-3, 0.6e-3, 1}},
               {.thickness = 10e-3,
                .zones = {{20e-3, 0}, {R, 2}},
                .chamber = geometry::AirUnitOutline{R, 1e-3, 1}},
               {.thickness = 5e-3, .zones = {{R, 0}}, .chamber = {}}},
    .radius = R,
    .part_names = {"foam", "film", "ring", "wall"},
    .tup_contact_radius = 22.5e-3,
    .tup_edge_radius = 2e-3,
    .wall_thickness = 2e-3,
    .wall_part = 3};
}
} // namespace solemech::tests
