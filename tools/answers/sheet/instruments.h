// SPDX-License-Identifier: Apache-2.0
// What the instruments of a bench are good to when nobody wrote a +-: half of the band that holds nine cases
// of ten. Common practice, no source, except where one is named.
#pragma once

#include "materials/hardness.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools::instruments
{
constexpr double height_by_eye = 6e-3;           ///< on a rule [m]
constexpr double height_by_camera = 2e-3;        ///< [m]
constexpr double force_sensor = 0.05;            ///< share
constexpr double acceleration_sensor = 0.05;     ///< share
constexpr double compression_by_camera = 0.5e-3; ///< [m]
constexpr double contact_time = 0.3e-3;          ///< [s]
constexpr double gauge_by_hand = 3;              ///< points of a hardness scale
constexpr double weighed_cube = 0.05;            ///< share; sides by callipers
constexpr double callipers_on_foam = 0.2e-3;     ///< [m], laid on, not pressed
constexpr double callipers_on_solid = 0.1e-3;    ///< [m], rubber without its pattern, or a plate
constexpr double ground_depth = 0.2e-3;          ///< [m], of a groove, by callipers or a wire
constexpr double unit_pressure = 0.1;            ///< share; no hand tool reads it without piercing the unit
constexpr double beside_a_unit = 0.5e-3;         ///< [m], thickness of a layer that must not be cut
constexpr double drop_height = 1e-3;             ///< set with a rule and a stop [m]
constexpr double drop_mass = 1e-3;               ///< [kg], kitchen scales
constexpr double guide_loss = 0.01;              ///< share, from drops on a reference block
constexpr double press_loop_return = 0.03;       ///< share of the work put in
/// Share; published relations of hardness and modulus differ by as much (materials/hardness.h).
constexpr double modulus_of_hardness = 0.25;

/// Half band of a hardness on a thick pad as a reading of the layer's stiffness [points]: that of the gauge
/// with that of the relation between both.
inline double hardness_on_pad(double gauge_half_band, const materials::Gauge &gauge, double modulus,
                              double poisson)
{
  const double softer = materials::half_space_reading(gauge, modulus * (1 - modulus_of_hardness), poisson);
  const double harder = materials::half_space_reading(gauge, modulus * (1 + modulus_of_hardness), poisson);
  return std::hypot(gauge_half_band, 0.5 * (harder - softer));
}
} // namespace solemech::tools::instruments
