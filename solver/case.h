// SPDX-License-Identifier: Apache-2.0
// A Case is everything one run needs to know, resolved and in SI: stack, plug, rig, surroundings, accuracy.
// Tools produce it from a case file; rigs consume it; its canonical text (case_text.h) gives its hash.
// Layers are listed from the foot side (top, z = total height) down to the ground side (z = 0).
#pragma once

#include "geometry/lug_outline.h"
#include "materials/abrasion_bench.h"
#include "materials/contact_heat.h"
#include "materials/court_friction.h"
#include "materials/gauge.h"
#include "materials/material.h"
#include "solver/doubt.h"

#include <cmath>
#include <memory>
#include <numbers>
#include <optional>
#include <string>
#include <variant>
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
  double abraded = 0; ///< what the abrasive of an abrasion bench takes from it: volume over force and way
                      ///< [1/Pa]; 0: not known
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

enum class TupShape { flat, sphere, spherical_ended, cone };
struct Tup
{
  TupShape shape = TupShape::flat;
  double   diameter = 0;  ///< [m]
  double edge_radius = 0; ///< flat, and where a spherical end meets the side wall; of a cone: all edges, and
                          ///< its tip when it has no flat [m]
  double end_radius =
    0; ///< spherical-ended: radius of the end; cone: of the flat up to the rounding of its edge [m]
  double half_angle = 0; ///< cone: from the axis [rad]
  double friction = 0;   ///< Coulomb against the stack [-]
};

/// Weight falling on a guided rod, or an instrumented falling mass.
struct DropRig
{
  Tup    tup;
  double mass = 0;            ///< [kg]
  double height = 0;          ///< fall to first touch [m]; the reader turns an energy into a height
  double guide_loss = 0;      ///< share of the energy lost on each way [-]
  int    hits = 1;            ///< recorded hits
  int    discarded = 0;       ///< hits before, not counted
  double rest = 30;           ///< between hits [s]
  bool   conditioned = false; ///< repeat until the return changes by less than 0.2 points
  double base_mass = 0;       ///< of the block under the stack [kg]; 0: rigid
  double base_stiffness = 0;  ///< between block and ground [N/m]
  double base_damping = 0;    ///< [N s/m]
};

enum class PressControl { displacement, force };
enum class PressWave { triangle, half_sine, table };
struct PressRig
{
  Tup                                    tup;
  PressControl                           control = PressControl::displacement;
  PressWave                              wave = PressWave::triangle;
  double                                 peak = 0;     ///< [m] or [N]
  double                                 duration = 1; ///< of one cycle or pulse [s]
  int                                    cycles = 1;
  double                                 rest = 0; ///< between pulses [s]
  std::vector<std::pair<double, double>> table;    ///< time [s], displacement [m] or force [N]
};

/// Kept squeezed or under a load for a long time, then let go and left to rest.
struct HoldRig
{
  Tup    tup;
  double squeeze = 0;          ///< over the height of the stack [-]; 0: held by a load
  double load = 0;             ///< [N]; 0: held at a squeeze
  double ramp = 1;             ///< in which it comes on, and goes again [s]
  double duration = 22 * 3600; ///< of the hold [s]
  double rest = 30 * 60;       ///< from letting go to the reading [s]

  bool is_under_load() const { return load > 0; }
};

/// The tip of a gauge as a striker: flat, nose, cone and rod with rounded edges; a ball is a nose on a rod of
/// its size.
inline Tup gauge_tip(const materials::Gauge &gauge)
{
  constexpr double sharp_edge =
    0.03e-3; // rounding of the edges that a drawing shows sharp [m]: of a gauge in use
  const auto &tip = gauge.tip;
  Tup         out;
  out.shape = TupShape::cone;
  if (tip.is_ball())
  {
    // A nose that goes over into its own rod without a cone worth the name.
    out.edge_radius = tip.nose_radius;
    out.half_angle = 0.05;
    out.diameter = 2 * tip.nose_radius * (1 + 1e-4);
    return out;
  }
  out.diameter = 2 * tip.rod_radius;
  out.half_angle = tip.half_angle;
  if (tip.nose_radius > 0)
    out.edge_radius = tip.nose_radius;
  else
  {
    // Rounded so that flat and flank stay in their places: the rounding takes tan(turn/2) of its radius from
    // the flat.
    out.edge_radius = sharp_edge;
    out.end_radius = tip.flat_radius - sharp_edge * std::tan(0.5 * (0.5 * std::numbers::pi - tip.half_angle));
  }
  return out;
}

/// Hardness gauge set onto the stack: its spring holds the tip, and the reading follows from the depth.
struct DurometerRig
{
  materials::Gauge gauge = materials::shore_a_gauge;
  Tup              tup = gauge_tip(gauge);
  double           set_on_time = 1; ///< in which the tip goes in [s]
  double           read_after = 3;  ///< from there to the reading [s]
  double           wanted = 0;      ///< reading for which the modulus is sought [points]; 0: none
};

/// What the ends of the skin under a lug do: meet lugs that move alike, or nothing.
enum class LugNeighbours { periodic, free };

/// How long a lug lasts: its face is worn down slide by slide.
struct WearLife
{
  std::string reference;                        ///< rubber whose wear on this court is known
  double      reference_modulus = 0;            ///< Young's modulus of that one [Pa]
  double      coefficient = 0;                  ///< of that one: volume over force and way [1/Pa]
  double      lowest = 0, highest = 0;          ///< band that it is known to [1/Pa]
  double      depth = 0;                        ///< mean over the face, at which it counts as worn [m]
  double      slip = 0;                         ///< way the lug slides in one step under its pressure [m]
  bool        to_and_fro = true;                ///< slides as often one way as the other
  double      known_hours = 0, known_depth = 0; ///< of a worn pair on this court [s, m]; 0: none is known
  double      steps_per_second = 0;             ///< of that pair in play [1/s]; 0: not known
};

/// Bars alike on a rectangle of the sole. The foot points along x from the end of the heel; y is to its outer
/// side.
struct TreadZone
{
  std::string                        name;
  std::optional<materials::Material> rubber;                ///< none: that of the lug
  double                             x = 0, y = 0;          ///< of its middle [m]
  double                             length = 0, width = 0; ///< along and across the foot [m]
  double bar_heading = 0; ///< direction across the bars, from straight ahead [rad]
  double arm_angle = 0;   ///< of a herringbone, to either side of that direction [rad]
  double push_off = 1, braking = 1, side_cut = 1; ///< parts of the load on it [-]
};

/// A sole of zones, slid over the court at headings all round.
struct Tread
{
  double force = 0;                       ///< on the sole [N]
  double foot_length = 0, foot_width = 0; ///< [m]
  double ball = 0;                        ///< x of the pivot [m]
  double give = 0;                        ///< way the flat sole sinks under the force [m]
  int    n_headings = 24;
  double lowest_moment = 0, highest_moment = 0; ///< of the pivot, between which no caution is due [N m]
  std::vector<TreadZone> zones;
};

/// One bar of a tread, cut across, pressed on a court and slid over it. Layers of its case: the skin, then
/// the lug.
struct SlideRig
{
  Tup                     tup; ///< the court as a striker: flat, as wide as the section
  geometry::LugOutline    lug; ///< height and skin are those of the layers
  LugNeighbours           neighbours = LugNeighbours::periodic;
  double                  pad_length = 0;     ///< along the bar, of pads with free ends [m]; 0: a long bar
  double                  pad_gap = 0;        ///< from end to end of two pads [m]
  std::string             court, court_state; ///< names, for people
  materials::FrictionData friction;           ///< of the court in its state
  double friction_lowest = 0, friction_highest = 0; ///< band that `friction.mu_ref state` is known to [-]
  materials::HeatProperties court_heat, lug_heat;
  double                    pressure = 0; ///< nominal: force over the fresh face [Pa]
  double                    speed = 0;    ///< of the slide [m/s]
  double                    distance = 0; ///< greatest way of the slide [m]
  double                    heading = 0;  ///< of the slide, from the direction across the bar [rad], 0..pi/2
  std::optional<WearLife>   wear;         ///< given: what thousands of slides do, instead of one
  std::optional<Tread>      tread; ///< given: slides of a whole sole at headings all round, instead of one
};

/// Abrasive held on a piece for some time. Layers of its case: from the abrasive inwards.
enum class AbrasionTool { sleeve, drum };
struct AbrasionRig
{
  Tup                   tup; ///< as wide as the sleeve or the piece
  AbrasionTool          tool = AbrasionTool::sleeve;
  materials::RotaryTool sleeve;
  materials::DrumBench  drum;
  double                seconds = 0;             ///< that the sleeve is held [s]; the drum has its way
  std::string           reference;               ///< rubber whose loss on this abrasive is known
  double                reference_modulus = 0;   ///< Young's modulus of that one [Pa]
  double                coefficient = 0;         ///< of that one: volume over force and way [1/Pa]
  double                lowest = 0, highest = 0; ///< band that it is known to [1/Pa]
  double                friction = 1;            ///< of the piece on the abrasive [-]
  double                heat_share = 0.5;        ///< of the heat, that goes into the piece [-]
  double                conductivity = 0, specific_heat = 0; ///< of the piece [W/(m K)], [J/(kg K)]
  double                found_depth = 0; ///< on a bench, at the same settings [m]; 0: none was found
  double                mass_lost = 0,
         cloth_loss = 0; ///< of the piece and of the reference rubber of the standard [kg]; 0: none
};

using Rig = std::variant<DropRig, PressRig, DurometerRig, SlideRig, AbrasionRig, HoldRig>;

/// What touches the stack.
inline const Tup &tup_of(const Rig &rig)
{
  return std::visit([](const auto &any) -> const Tup & { return any.tup; }, rig);
}

struct Case
{
  std::string        label;  ///< e.g. "heel-drop"
  std::string        title;  ///< one line for people
  std::string        note;   ///< what the author of the case says about it
  std::vector<Layer> layers; ///< foot side first
  Plug               plug;
  Rig                rig;
  double             temperature = 296.15;          ///< [K]
  double             gravity = 9.80665;             ///< [m/s2]
  double             atmospheric_pressure = 101325; ///< [Pa]
  double             accuracy = 0.01;               ///< wished relative accuracy of the readings [-]
  std::vector<Doubt> doubts;                        ///< of its numbers, for bands; not seen by the solver
};
} // namespace solemech::solver
