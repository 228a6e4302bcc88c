// SPDX-License-Identifier: Apache-2.0
// Hardness gauges: tip, spring and travel of each scale. The reading H is where the spring holds the tip:
// F = base + slope H at the depth travel (1 - H/100).
// Sources: ISO 48-4 (A, D), ASTM D2240 (OO, and rounded tip of D), SRIS 0101 / JIS K 7312 (Asker C), all from
// memory.
#pragma once

#include "materials/errors.h"

#include <array>
#include <numbers>
#include <string_view>

namespace solemech::materials
{
enum class HardnessScale { shore_a, shore_d, shore_oo, asker_c };

struct Hardness
{
  double        value = 0; ///< reading [0..100]
  HardnessScale scale = HardnessScale::shore_a;
};

/// A round tip: a flat (or none), then a rounded nose (or none), then a cone up to the rod it is ground on. A
/// ball has a nose and no cone.
struct IndenterTip
{
  double flat_radius = 0; ///< of the end face [m]; 0: none
  double nose_radius = 0; ///< of the rounding of an end without a face [m]; 0: none
  double half_angle = 0;  ///< of the cone, from the axis [rad]; 0: ball
  double rod_radius = 0;  ///< where the cone ends [m]; of a ball its own radius

  bool   is_ball() const { return half_angle == 0; }
  double slope() const { return 1 / std::tan(half_angle); } ///< depth over radius along the cone
  /// Radius at which the cone starts: end of the flat, or where it touches the nose [m].
  double cone_start() const { return nose_radius > 0 ? nose_radius * std::cos(half_angle) : flat_radius; }
};

struct Gauge
{
  HardnessScale    scale;
  std::string_view name; ///< as on a bench sheet
  IndenterTip      tip;
  double           base_force, force_slope; ///< [N], [N] a point
  double           travel;                  ///< [m]
  double           foot_mass;               ///< that presses the foot onto the specimen [kg]; 0: by hand

  double force(double reading) const { return base_force + force_slope * reading; } ///< of the spring [N]
  double depth(double reading) const { return travel * (1 - reading / 100); }       ///< of the tip [m]
  double reading_at(double depth) const { return 100 * (1 - depth / travel); }      ///< [points]
};

namespace detail
{
constexpr double degree = std::numbers::pi / 180;
} // namespace detail

inline constexpr Gauge shore_a_gauge{
  HardnessScale::shore_a, "ShoreA", {0.395e-3, 0, 17.5 * detail::degree, 0.635e-3}, 0.55, 0.075, 2.5e-3, 1.0};
inline constexpr Gauge shore_d_gauge{
  HardnessScale::shore_d, "ShoreD", {0, 0.1e-3, 15 * detail::degree, 0.635e-3}, 0, 0.445, 2.5e-3, 5.0};
inline constexpr Gauge shore_oo_gauge{
  HardnessScale::shore_oo, "ShoreOO", {0, 1.19e-3, 0, 1.19e-3}, 0.203, 0.00908, 2.5e-3, 0};
/// 55 to 855 gram-force.
inline constexpr Gauge asker_c_gauge{
  HardnessScale::asker_c, "AskerC", {0, 2.54e-3, 0, 2.54e-3}, 0.055 * 9.80665, 0.008 * 9.80665, 2.54e-3, 1.0};

inline constexpr std::array<Gauge, 4> gauges{shore_a_gauge, shore_d_gauge, shore_oo_gauge, asker_c_gauge};

inline const Gauge &gauge_of(HardnessScale scale)
{
  for (const auto &gauge : gauges)
    if (gauge.scale == scale)
      return gauge;
  throw InvalidParameter("hardness scale", static_cast<int>(scale), "one of the gauges known");
}

/// Readings that a gauge is good for; outside of them its spring is nearly slack or its tip hardly moves.
/// Below 10 and above 90: ASTM D2240 (from memory); Shore A and D below 20 as in ISO 48-4 (from memory).
struct ReliableReadings
{
  double lowest, highest;
};
inline ReliableReadings reliable_readings(HardnessScale scale)
{
  const bool sharp = scale == HardnessScale::shore_a || scale == HardnessScale::shore_d;
  return {sharp ? 20.0 : 10.0, 90.0};
}
} // namespace solemech::materials
