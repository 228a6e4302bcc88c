// SPDX-License-Identifier: Apache-2.0
// Hardness readings and Young's modulus. Two kinds of relation: fits of others (Gent, error function, log-
// linear) and the linear-elastic indentation of a half-space by the gauge's own tip. Published relations
// differ by a factor of two at 60 to 70 Shore A: a modulus from a hardness is good to +-25 % at best, and
// its relation is to be named.
// Sources at each function; instruments in gauge.h.
#pragma once

#include "materials/gauge.h"

#include "numerics/rising_root.h"

namespace solemech::materials
{
/// E [Pa] = 98100 (56 + 7.62336 S)/[0.137505 (254 - 2.54 S)]. A.N. Gent, Trans. IRI 34 (1958); 20 to 80 Shore
/// A.
inline double modulus_gent(double shore_a)
{
  require(shore_a >= 20 && shore_a <= 80, "Shore A", shore_a, "a reading from 20 to 80 for Gent's relation");
  return 98100 * (56 + 7.62336 * shore_a) / (0.137505 * (254 - 2.54 * shore_a));
}

/// Shore A by Gent's relation turned round, E [Pa].
inline double shore_a_gent(double youngs_modulus)
{
  require_positive("Young's modulus", youngs_modulus);
  const double q = youngs_modulus / 98100 * 0.137505;
  return (254 * q - 56) / (7.62336 + 2.54 * q);
}

/// Shore A (IRHD) = 100 erf(3.186e-4 sqrt(E)), E [Pa]. BS 903 error function, as quoted in reviews.
inline double shore_a_error_function(double youngs_modulus)
{
  require_positive("Young's modulus", youngs_modulus);
  return 100 * std::erf(3.186e-4 * std::sqrt(youngs_modulus));
}

/// E [Pa] of the error-function relation, 1 to 99 Shore A.
inline double modulus_error_function(double shore_a)
{
  require(shore_a >= 1 && shore_a <= 99, "Shore A", shore_a, "a reading from 1 to 99");
  return numerics::rising_root([&](double e) { return 100 * std::erf(3.186e-4 * std::sqrt(e)) - shore_a; },
                               1.0, 1e9);
}

/// log10(E/MPa) = 0.0235 S - 0.6403, base 10; S = Shore A from 20 to 80, or Shore D + 50 from 30 to 85 D.
/// H.J. Qi, K. Joyce, M.C. Boyce, Rubber Chem. Technol. 76 (2003).
inline double modulus_log_linear(const Hardness &hardness)
{
  const bool d = hardness.scale == HardnessScale::shore_d;
  require(d || hardness.scale == HardnessScale::shore_a, "hardness", hardness.value,
          "a Shore A or Shore D reading");
  require(d ? hardness.value >= 30 && hardness.value <= 85 : hardness.value >= 20 && hardness.value <= 80,
          "hardness", hardness.value, "20 to 80 Shore A or 30 to 85 Shore D");
  return 1e6 * std::pow(10.0, 0.0235 * (hardness.value + (d ? 50 : 0)) - 0.6403);
}

/// E [Pa] = (781.88 - 156.376 u)/u^2 MPa, u = (100 - S_D)/20; 30 to 85 Shore D. Same source.
inline double modulus_shore_d_qi(double shore_d)
{
  require(shore_d >= 30 && shore_d <= 85, "Shore D", shore_d, "a reading from 30 to 85");
  const double u = (100 - shore_d) / 20;
  return 1e6 * (781.88 - 156.376 * u) / (u * u);
}

/// Where a rigid tip presses on an elastic half-space without friction.
struct HalfSpaceContact
{
  double radius = 0; ///< [m]
  double force = 0;  ///< over E* = E/(1 - nu^2) [m2]
};

/// Contact of a tip that is in by `depth` [m]. For an outline f(r): d = integral of a f'/sqrt(a^2 - r^2), F =
/// 2 E* integral of r^2 f'/sqrt(a^2 - r^2), r from 0 to the contact radius a: I.N. Sneddon, Int. J. Eng. Sci.
/// 3 (1965). Flat and cone: U.B.C.O. Ejike 1981 (from memory). Once the contact has reached the rod it grows
/// no more, and the force by 2 a E* a unit of depth.
inline HalfSpaceContact half_space_contact(const IndenterTip &tip, double depth)
{
  struct Pressed
  {
    double depth, force;
  };
  const double start = tip.is_ball() ? 0.0 : tip.cone_start(), nose = tip.nose_radius;
  const auto   pressed = [&](double a) {
    const double b = tip.is_ball() ? a : std::min(a, start); // nose up to b, cone from there
    Pressed      out{0, 0};
    if (nose > 0)
    {
      const double ends = std::sqrt(nose * nose - b * b) * std::sqrt(a * a - b * b);
      const double logarithm =
        b < a ? std::log((nose + a) / (std::sqrt(nose * nose - b * b) + std::sqrt(a * a - b * b)))
                : std::atanh(a / nose);
      out = {a * logarithm, ends - nose * a + (nose * nose + a * a) * logarithm};
    }
    if (a > b)
      out = {out.depth + a * tip.slope() * std::acos(b / a),
             out.force + tip.slope() * (a * a * std::acos(b / a) + b * std::sqrt(a * a - b * b))};
    return out;
  };
  const double widest = tip.is_ball() ? nose * (1 - 1e-15) : tip.rod_radius;
  const auto   at_rod = pressed(widest);
  if (depth >= at_rod.depth)
    return {widest, at_rod.force + 2 * widest * (depth - at_rod.depth)};
  const double least = nose > 0 ? 0.0 : start;
  const double radius =
    numerics::rising_root([&](double a) { return pressed(a).depth - depth; }, least, widest);
  return {radius, pressed(radius).force};
}

/// Its force alone.
inline double half_space_force(const IndenterTip &tip, double depth)
{
  return half_space_contact(tip, depth).force;
}

/// E [Pa] of the half-space on which a gauge reads H, above 0 and below 100. nu = 0.5: rubber, 0 to 0.3:
/// foam.
inline double modulus_from_reading(const Gauge &gauge, double reading, double poisson_ratio)
{
  require(reading > 0 && reading < 100, "hardness", reading, "a reading above 0 and below 100");
  require(poisson_ratio >= 0 && poisson_ratio <= 0.5, "Poisson ratio", poisson_ratio,
          "a number from 0 to 0.5");
  return (1 - poisson_ratio * poisson_ratio) * gauge.force(reading) /
         half_space_force(gauge.tip, gauge.depth(reading));
}

/// What a gauge reads on a half-space of E [Pa] and nu [-]; 0 when the tip goes in all the way.
inline double half_space_reading(const Gauge &gauge, double youngs_modulus, double poisson_ratio)
{
  require_positive("Young's modulus", youngs_modulus);
  constexpr double ends = 1e-6;
  if (modulus_from_reading(gauge, ends, poisson_ratio) > youngs_modulus)
    return 0;
  return numerics::rising_root(
    [&](double h) { return modulus_from_reading(gauge, h, poisson_ratio) - youngs_modulus; }, ends,
    100 - ends);
}
} // namespace solemech::materials
