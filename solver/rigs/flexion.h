// SPDX-License-Identifier: Apache-2.0
// Toe flexion of a long section: all ahead of the flexion axis is clamped between pads, and an arm that turns
// about the axis lifts the rear by a frictionless roller. The lower pad ends at the axis. The upper one ends
// further ahead, by the thickness of the uppermost foam: with both at the axis the corner of that foam
// creases at 25 to 30 degrees, and what is read then depends on the mesh.
#pragma once

#include "solver/models/section_model.h"
#include "solver/resolution.h"

#include <limits>
#include <numbers>
#include <optional>
#include <string>

namespace solemech::solver
{
inline constexpr double degree = std::numbers::pi / 180; ///< [rad]

struct FlexionRig
{
  Point       axis{};                       ///< ball line, at the height of the floor [m]
  double      setback = 10e-3;              ///< of the end of the upper pad, ahead of the axis [m]
  double      arm = 100e-3;                 ///< from the axis to the roller [m]
  double      roller_radius = 8e-3;         ///< [m]
  double      greatest_angle = 45 * degree; ///< of the arm [rad]
  double      touch_moment = 0.1;           ///< where angles start to count [N m]
  double      window_from = 15 * degree, window_to = 25 * degree; ///< of the stiffness, from there [rad]
  double      secant = 30 * degree;                               ///< [rad]
  double      rate = 30 * degree; ///< of the arm [rad/s]; common practice, no source
  std::string plate = {};         ///< part whose strain is watched
  double      strain_limit = std::numeric_limits<double>::infinity(); ///< of the plate [-]
};

/// What was not reached is not there.
struct FlexionOutcome
{
  Result                record;          ///< curves and ledger; not complete where the bench stopped early
  double                zero = 0;        ///< angle at the touch moment: what the toe spring leaves [rad]
  std::optional<double> stiffness;       ///< least-squares slope over the window [N m/rad]
  std::optional<double> secant;          ///< [N m/rad]
  std::optional<double> loop_loss;       ///< of the work up to the greatest angle, not given back [-]
  double                most_strain = 0; ///< of the plate so far, either way [-]
  double                flex_line = 0;   ///< ahead of the axis, where the sole is bent most at the end [m]
};

/// One flexion; no error estimate. Throws std::invalid_argument for a rig that does not fit the section.
FlexionOutcome run_flexion(const LongSection &section, const Case &surroundings, const FlexionRig &rig,
                           const Resolution &resolution);
} // namespace solemech::solver
