// SPDX-License-Identifier: Apache-2.0
// A lug of a tread on a court: slid once (slide.h), worn down (wear.h), or slid as the tread of a whole sole
// (tread.h).
#pragma once

#include "geometry/lug_outline.h"
#include "materials/contact_heat.h"
#include "materials/court_friction.h"
#include "materials/material.h"
#include "solver/tup.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

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

/// One run at a given resolution, by run_slide, run_wear or run_tread; no error estimate.
Result run_rig(const Case &input, const SlideRig &rig, const Resolution &resolution,
               const RunOptions &options);
} // namespace solemech::solver
