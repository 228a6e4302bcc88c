// SPDX-License-Identifier: Apache-2.0
// A Case is everything one run needs to know, resolved and in SI: stack, plug, rig, surroundings, accuracy.
// Tools produce it from a case file; rigs consume it; its canonical text (case_text.h) gives its hash.
// Layers are listed from the foot side (top, z = total height) down to the ground side (z = 0).
#pragma once

#include "materials/material.h"
#include "solver/doubt.h"
#include "solver/rig.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
enum class ChamberState { sealed, open, leaking };

/// Sealed or punctured air unit filling a layer out to its own diameter.
struct AirUnit
{
  double              diameter = 0;       ///< outer, film included [m]
  double              film_thickness = 0; ///< [m]
  materials::Material film;
  ChamberState        state = ChamberState::sealed;
  double              gauge_pressure = 0; ///< at the temperature of the test [Pa]
  double              outside_volume = 0; ///< V_x: volume of the unit outside the plug [m3]
  double heat_time = -1;    ///< tau_th [s]; < 0: from fibre spacing; infinity: adiabatic; 0: isothermal
  double leak_diameter = 0; ///< orifice [m], only when leaking
  bool   has_fibres = true;
  double fibre_spacing = 3e-3;    ///< both ways [m]
  double fibre_stiffness = 20e3;  ///< of one fibre [N/m]
  double fibre_radius = 10e-6;    ///< of one filament, for the heat time [m]
  double filament_spacing = 1e-3; ///< between filaments, for the heat time [m]
  double packed_share = 0.10;     ///< height of the packed fibres and film over the chamber height [-]
};

struct Layer
{
  std::string         name;     ///< address, unique in the stack
  materials::Material material; ///< core material; of an air-unit layer: what fills the layer around the unit
  double              thickness = 0;     ///< [m]
  double              area_share = 1;    ///< lugs: share of the area that is there [-], 0..1
  double              core_diameter = 0; ///< > 0: `material` inside, `ring` outside of this diameter [m]
  std::optional<materials::Material> ring;
  std::optional<AirUnit>             unit;
  double abraded = 0;   ///< what the abrasive of an abrasion bench takes from it: volume over force and way
                        ///< [1/Pa]; 0: not known
  bool laid_in = false; ///< lies in the shoe on the foot side of its sole: an insert, a footbed
};

/// Height of a stack of layers, foot side to ground [m].
inline double stack_height(const std::vector<Layer> &layers)
{
  double height = 0;
  for (const Layer &layer : layers)
    height += layer.thickness;
  return height;
}

enum class Side { free, ring, shell }; ///< cut free / wrapped by a firmer wall / shell left on
enum class Base { bonded, resting, clamped, sliding }; ///< sliding: held vertically, frictionless
enum class Section { axisymmetric, plane_strain };

struct Plug
{
  Section             section = Section::axisymmetric;
  double              radius = 0; ///< or half width when plane strain [m]
  Side                side = Side::free;
  materials::Material side_material;       ///< of the wall, when wrapped
  double              side_thickness = 0;  ///< of the wall, when wrapped [m]
  double              shell_stiffness = 0; ///< radial stiffness per area, when the shell is left on [Pa/m]
  Base                base = Base::bonded;
  double              base_friction = 0.6; ///< Coulomb, when resting [-]
};

struct Case
{
  std::string        label;            ///< e.g. "heel-drop"
  std::string        title;            ///< one line for people
  std::string        note;             ///< what the author of the case says about it
  bool               invented = false; ///< stack and bench are made up, and say so
  std::vector<Layer> layers;           ///< foot side first
  Plug               plug;
  Rig                rig;
  double             temperature = 296.15;          ///< [K]
  double             gravity = 9.80665;             ///< [m/s2]
  double             atmospheric_pressure = 101325; ///< [Pa]
  double             accuracy = 0.01;               ///< wished relative accuracy of the readings [-]
  std::vector<Doubt> doubts;                        ///< of its numbers, for bands; not seen by the solver
};
} // namespace solemech::solver
