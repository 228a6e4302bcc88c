// SPDX-License-Identifier: Apache-2.0
// Gas in the closed cells of a foam of relative density R: the gas fills the volume J - R per reference
// volume. Gauge pressure p = phi p_a [ ((1 - R)/(J - R))^n - 1 ], energy psi = -integral of p dJ. With x =
// (J - R)/(1 - R) and L = ln x both are written in expm1(.. L), so that J = 1 keeps every digit and n = 1 is
// the plain limit of the power law.
// Source: Gibson & Ashby, Cellular Solids, 2nd ed. 1997, ch. 5; isothermal for cells of 0.2-0.5 mm (from
// memory).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct CellGas
{
  double relative_density = 0;          ///< R, foam over polymer density [-], 0 <= R < 1
  double closed_share = 1;              ///< phi, share of the cells still closed [-], 0..1
  double atmospheric_pressure = 101325; ///< p_a [Pa]
  double exponent = 1;                  ///< n [-], 1 isothermal .. 1.4 adiabatic

  /// Gas part of the small-strain bulk modulus, n phi p_a/(1 - R) [Pa].
  double bulk_modulus() const
  {
    return exponent * closed_share * atmospheric_pressure / (1 - relative_density);
  }

  /// Gauge pressure in the cells [Pa] at the volume ratio J, J > R.
  template <typename Number>
  Number pressure(const Number &volume_ratio) const
  {
    using std::expm1, std::log1p;
    return closed_share * atmospheric_pressure *
           expm1(-exponent * log1p((volume_ratio - 1.0) * (1 / (1 - relative_density))));
  }

  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    using std::expm1, std::log1p;
    const double solid = 1 - relative_density, n = exponent, scale = closed_share * atmospheric_pressure;

    const Number growth = expm1(trace(strains)); // J - 1
    const Number j = 1.0 + growth;
    const Number u = growth * (1 / solid); // x - 1
    const Number log_x = log1p(u);
    const Number drop = expm1(-n * log_x);                     // x^-n - 1
    const Number slope = n / solid * (1.0 + drop) / (1.0 + u); // -d(drop)/dJ

    Number bracket = expm1_excess(log_x, u);
    if (n != 1)
    {
      const Number y = (1 - n) * log_x;
      bracket = bracket - expm1_excess(y, expm1(y)) * (1 / (1 - n));
    }
    return volume_response<Number>(scale * solid * bracket, -scale * j * drop,
                                   scale * j * (j * slope - drop));
  }
};

/// Throws InvalidParameter when a number is outside its range.
inline void check(const CellGas &gas)
{
  require(gas.relative_density >= 0 && gas.relative_density < 0.9, "relative density", gas.relative_density,
          "a share of the polymer density from 0 to below 0.9");
  require(gas.closed_share >= 0 && gas.closed_share <= 1, "closed cells", gas.closed_share,
          "a share from 0 to 1");
  require_not_negative("atmospheric pressure", gas.atmospheric_pressure);
  require(gas.exponent >= 1 && gas.exponent <= 1.7, "gas exponent", gas.exponent, "a number from 1 to 1.7");
}
} // namespace solemech::materials
