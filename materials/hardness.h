// SPDX-License-Identifier: Apache-2.0
// Hardness readings and Young's modulus. Two kinds of relation: published fits (Gent, error function, log-
// linear) and the linear-elastic indentation of a half-space by the gauge's own tip. Published relations
// differ by a factor of two at 60 to 70 Shore A: a modulus from a hardness is good to +-25 % at best, and
// its relation is to be named.
// Sources at each function; instrument data ISO 48-4 (A), SRIS 0101 (Asker C), ASTM D2240 (OO), from memory.
#pragma once

#include "materials/errors.h"

#include <string>

namespace solemech::materials
{
enum class HardnessScale { shore_a, shore_d, shore_oo, asker_c };

struct Hardness
{
  double        value = 0; ///< reading [0..100]
  HardnessScale scale = HardnessScale::shore_a;
};

/// Finds x with f(x) = 0 in [low, high] by halving; f must change sign there.
template <typename Function>
double bisect(const Function &f, double low, double high)
{
  const bool rising = f(high) > 0;
  for (int i = 0; i < 200 && high - low > 1e-15 * (std::abs(low) + std::abs(high)); ++i)
  {
    const double middle = 0.5 * (low + high);
    ((f(middle) > 0) == rising ? high : low) = middle;
  }
  return 0.5 * (low + high);
}

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
  return bisect([&](double e) { return 100 * std::erf(3.186e-4 * std::sqrt(e)) - shore_a; }, 1.0, 1e9);
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

/// Gauge whose tip is a sphere: force = base + slope H, depth = travel (1 - H/100).
struct SphereGauge
{
  double radius, base_force, force_slope, travel; ///< [m], [N], [N], [m]
};
inline constexpr SphereGauge asker_c_gauge{2.54e-3, 0.055 * 9.80665, 0.008 * 9.80665,
                                           2.54e-3}; // 55 to 855 gf
inline constexpr SphereGauge shore_oo_gauge{1.19e-3, 0.203, 0.00908, 2.5e-3};

/// Force over E* = E/(1 - nu^2) [m2] that presses a rigid sphere `depth` [m] into a half-space.
/// I.N. Sneddon, Int. J. Eng. Sci. 3 (1965): d = a/2 ln[(R + a)/(R - a)],
/// F = E*/2 {(a^2 + R^2) ln[(R + a)/(R - a)] - 2 a R}.
inline double sphere_force_over_modulus(double radius, double depth)
{
  const double a =
    bisect([&](double x) { return x * std::atanh(x / radius) - depth; }, 0.0, radius * (1 - 1e-15));
  return (a * a + radius * radius) * std::atanh(a / radius) - a * radius;
}

/// E [Pa] that reads H on a spherical gauge, H above 0 and below 100. nu = 0.5 rubber, about 0.1 to 0.3 foam.
inline double modulus_from_sphere(const SphereGauge &gauge, double reading, double poisson_ratio)
{
  require(reading > 0 && reading < 100, "hardness", reading, "a reading above 0 and below 100");
  require(poisson_ratio >= 0 && poisson_ratio <= 0.5, "Poisson ratio", poisson_ratio,
          "a number from 0 to 0.5");
  const double force = gauge.base_force + gauge.force_slope * reading;
  return (1 - poisson_ratio * poisson_ratio) * force /
         sphere_force_over_modulus(gauge.radius, gauge.travel * (1 - reading / 100));
}

/// Reading of a spherical gauge on E [Pa], nu [-].
inline double sphere_reading(const SphereGauge &gauge, double youngs_modulus, double poisson_ratio)
{
  require_positive("Young's modulus", youngs_modulus);
  return bisect([&](double h) { return modulus_from_sphere(gauge, h, poisson_ratio) - youngs_modulus; }, 1e-6,
                100 - 1e-6);
}

/// E [Pa] that reads S on the exact Shore A cone, nu = 0.5. Face radius a0 = 0.395 mm, flank 72.5 degrees to
/// the surface: d = a tan(b) acos(a0/a), F = E* a^2 tan(b) [acos(a0/a) + (a0/a) sqrt(1 - a0^2/a^2)]. J.O.
/// Ejike 1981, after Sneddon (from memory). The contact stays on the cone (a < 0.635 mm) for S >= 30.
inline double modulus_shore_a_cone(double shore_a)
{
  require(shore_a >= 30 && shore_a < 100, "Shore A", shore_a,
          "a reading from 30 to below 100 for the exact cone");
  const double a0 = 0.395e-3, slope = std::tan(72.5 / 180 * std::acos(-1.0));
  const double depth = 2.5e-3 * (1 - shore_a / 100), force = 0.55 + 0.075 * shore_a;
  const double a = bisect([&](double x) { return x * slope * std::acos(a0 / x) - depth; }, a0, 1e-2);
  const double q = a0 / a;
  const double f = a * a * slope * (std::acos(q) + q * std::sqrt(1 - q * q));
  return 0.75 * force / f;
}

/// Shore A reading of the exact cone on E [Pa], nu = 0.5; moduli that would read below 30 are refused.
inline double shore_a_cone(double youngs_modulus)
{
  const double softest = modulus_shore_a_cone(30);
  require(youngs_modulus >= softest && std::isfinite(youngs_modulus), "Young's modulus", youngs_modulus,
          "1.2 MPa or more (30 Shore A)");
  return bisect([&](double s) { return modulus_shore_a_cone(s) - youngs_modulus; }, 30.0, 100 - 1e-6);
}
} // namespace solemech::materials
