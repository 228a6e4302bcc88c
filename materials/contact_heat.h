// SPDX-License-Identifier: Apache-2.0
// Heat of a rubbing contact: how it divides between two bodies, how warm a surface gets under constant
// heating, under a moving band and under a moving round spot. Straight half-spaces, constant properties,
// temperature rises [K]. Sources: H.S. Carslaw & J.C. Jaeger, Conduction of Heat in Solids (half-space,
// constant flux); J.C. Jaeger, Proc. Roy. Soc. NSW 76 (1942) (moving band); X. Tian & F.E. Kennedy, J.
// Tribol. 116 (1994) (round spot at any speed).
#pragma once

#include "materials/errors.h"

#include "numerics/rising_root.h"

#include <array>
#include <numbers>

namespace solemech::materials
{
/// What a body does with heat.
struct HeatProperties
{
  double conductivity = 0;  ///< k [W/(m K)]
  double density = 0;       ///< [kg/m3]
  double specific_heat = 0; ///< c [J/(kg K)]

  double diffusivity() const { return conductivity / (density * specific_heat); } ///< [m2/s]
  double effusivity() const
  {
    return std::sqrt(conductivity * density * specific_heat);
  } ///< [W s^0.5/(m2 K)]
};

/// Throws InvalidParameter unless all three numbers are finite and above 0.
inline void check(const HeatProperties &heat)
{
  require_positive("conductivity", heat.conductivity);
  require_positive("density", heat.density);
  require_positive("specific heat", heat.specific_heat);
}

/// Share of the heat made at a shared face that goes into the first body, both resting on each other:
/// e1/(e1 + e2).
inline double heat_share(const HeatProperties &first, const HeatProperties &second)
{
  return first.effusivity() / (first.effusivity() + second.effusivity());
}

/// Rise at the depth z [m] of a half-space heated with q [W/m2] for t [s]:
/// (2 q/k) sqrt(alpha t/pi) exp(-z^2/(4 alpha t)) - (q z/k) erfc(z/(2 sqrt(alpha t))).
inline double constant_flux_rise(const HeatProperties &body, double flux, double time, double depth = 0)
{
  if (!(time > 0))
    return 0;
  const double spread = std::sqrt(body.diffusivity() * time), z = depth / (2 * spread);
  return 2 * flux / body.conductivity * spread *
         (std::exp(-z * z) / std::sqrt(std::numbers::pi) - z * std::erfc(z));
}

/// Common rise of two half-spaces resting on each other with q [W/m2] made between them for t [s].
inline double shared_flux_rise(const HeatProperties &first, const HeatProperties &second, double flux,
                               double time)
{
  return 2 * flux * std::sqrt(time / std::numbers::pi) / (first.effusivity() + second.effusivity());
}

/// Share of the frictional heat that goes into a lug of `length` [m] that has slid for `time` [s] at `speed`
/// [m/s]. It meets fresh floor, which takes more than a resting one: a floor point under the lug has been
/// heated for its distance from the leading edge over the speed. Equal mean temperatures of both faces; heat
/// flows straight down.
inline double sliding_heat_share(const HeatProperties &lug, const HeatProperties &floor, double length,
                                 double speed, double time)
{
  if (!(time > 0))
    return heat_share(lug, floor);
  const double way = speed * time;
  // Mean over the lug of the square root of the time a floor point has been under it.
  const double floor_root =
    way < length ? std::sqrt(time) * (1 - way / (3 * length)) : 2.0 / 3 * std::sqrt(length / speed);
  const double of_lug = std::sqrt(time) / lug.effusivity(), of_floor = floor_root / floor.effusivity();
  return of_floor / (of_lug + of_floor);
}

namespace detail
{
/// exp(x) K0(x) and exp(x) K1(x), x > 0. Beyond 40 by Hankel's expansion, five terms: the library's functions
/// underflow.
inline std::array<double, 2> scaled_bessel_k(double x)
{
  if (x < 40)
    return {std::exp(x) * std::cyl_bessel_k(0.0, x), std::exp(x) * std::cyl_bessel_k(1.0, x)};
  std::array<double, 2> out{};
  for (const int order : {0, 1})
  {
    double sum = 1, term = 1;
    for (int n = 1; n <= 5; ++n)
    {
      term *= (4.0 * order * order - (2.0 * n - 1) * (2.0 * n - 1)) / (n * 8 * x);
      sum += term;
    }
    out[order] = std::sqrt(std::numbers::pi / (2 * x)) * sum;
  }
  return out;
}

/// Integral of exp(-u) K0(|u|) from 0 to x, in closed form: for x > 0 it is 1 + x exp(-x) (K0 - K1), and for
/// x < 0 it is 1 - |x| exp(|x|) (K0 + K1) (differentiate to check).
inline double band_integral(double x)
{
  const double u = std::abs(x);
  if (u < 1e-12)
    return 0;
  const auto [k0, k1] = scaled_bessel_k(u);
  return x > 0 ? 1 + u * std::exp(-2 * u) * (k0 - k1) : 1 - u * (k0 + k1);
}
} // namespace detail

/// A band of half-width b that moves over a half-space and heats it with q: steady rise in units of q b/k.
/// L = speed x b/(2 diffusivity).
class MovingBand
{
public:
  /// Throws InvalidParameter unless L > 0.
  explicit MovingBand(double peclet) : peclet_(peclet)
  {
    require_positive("speed number of the band", peclet);
  }

  /// At a place x over b, positive ahead of the centre: (1/(pi L)) integral of exp(-u) K0|u| over
  /// [L (x - 1), L (x + 1)].
  double rise(double place) const
  {
    return (detail::band_integral(peclet_ * (place + 1)) - detail::band_integral(peclet_ * (place - 1))) /
           (std::numbers::pi * peclet_);
  }

  /// Where it is hottest, x over b: behind the centre, hence negative.
  double hottest_place() const
  {
    // The slope is exp(-u) K0|u| at the one end less that at the other; it changes sign once.
    const auto log_heat = [](double u) {
      return (u > 0 ? -2 * u : 0.0) + std::log(detail::scaled_bessel_k(std::abs(u))[0]);
    };
    return numerics::rising_root(
      [&](double x) { return log_heat(peclet_ * (x - 1)) - log_heat(peclet_ * (x + 1)); }, -1 + 1e-12, 0.);
  }

  double greatest() const { return rise(hottest_place()); }

  /// Mean over the band, by Simpson's rule over x = sin(s): the rise has logarithmic slopes at both ends.
  double mean() const
  {
    constexpr int n = 400;
    double        sum = 0;
    for (int i = 0; i <= n; ++i)
    {
      const double s = std::numbers::pi * (static_cast<double>(i) / n - 0.5);
      sum += (i == 0 || i == n ? 1 : i % 2 ? 4 : 2) * rise(std::sin(s)) * std::cos(s);
    }
    return 0.5 * sum * std::numbers::pi / (3 * n);
  }

private:
  double peclet_;
};

/// Greatest rise under a round spot of radius a [m] with even heating q [W/m2] that moves at `speed` [m/s]:
/// 2 q a/(k sqrt(pi (1.273 + Pe))), Pe = speed x a/(2 diffusivity). Meets the resting spot, q a/k, to 0.01 %.
inline double moving_spot_rise(const HeatProperties &body, double flux, double radius, double speed)
{
  const double peclet = speed * radius / (2 * body.diffusivity());
  return 2 * flux * radius / (body.conductivity * std::sqrt(std::numbers::pi * (1.273 + peclet)));
}
} // namespace solemech::materials
