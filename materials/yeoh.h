// SPDX-License-Identifier: Apache-2.0
// Rubber at constant volume: Yeoh's cubic in I1 with the second term of Mooney and Rivlin added,
//   W = c10 (I1 - 3) + c20 (I1 - 3)^2 + c30 (I1 - 3)^3 + c01 (I2 - 3),
// of the isochoric stretches exp(e_a), e_a = eps_a - tr(eps)/3: I1 = sum exp(2 e_a), I2 = sum exp(-2 e_a).
// The chain rule through the deviator P = 1 - 11/3 is linear: tau = P dW/de, moduli = P (d2W/de2) P.
// Source: O.H. Yeoh, Rubber Chem. Technol. 66 (1993); M. Mooney 1940, R.S. Rivlin 1948 (from memory).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct IsochoricRubber
{
  double c10 = 0, c20 = 0, c30 = 0; ///< Yeoh [Pa]
  double c01 = 0;                   ///< Mooney-Rivlin [Pa]

  double shear_modulus() const { return 2 * (c10 + c01); } ///< small strain [Pa]

  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    using std::expm1;
    const LogStrains<Number> e = deviator(strains);

    std::array<Number, 3> up, down;         // exp(2 e) - 1, exp(-2 e) - 1
    Number                i1(0.0), i2(0.0); // I1 - 3, I2 - 3: the linear parts cancel as sum e_a = 0
    for (std::size_t a = 0; a < 3; ++a)
    {
      const Number twice = 2.0 * e[a];
      up[a] = expm1(twice);
      down[a] = -1.0 * up[a] / (1.0 + up[a]);
      i1 = i1 + expm1_excess(twice, up[a]);
      i2 = i2 + expm1_excess(Number(-1.0 * twice), down[a]);
    }
    const Number w1 = c10 + i1 * (2 * c20 + 3 * c30 * i1);
    const Number w11 = 2 * c20 + 6 * c30 * i1;

    const std::array<Number, 3> slope = deviator<Number>({2.0 * up[0], 2.0 * up[1], 2.0 * up[2]});
    std::array<Number, 3>       gradient, diagonal;
    for (std::size_t a = 0; a < 3; ++a)
    {
      gradient[a] = 2.0 * (w1 * up[a] - c01 * down[a]);
      diagonal[a] = 4.0 * (w1 * (1.0 + up[a]) + c01 * (1.0 + down[a]));
    }

    SpectralResponse<Number> out;
    out.energy = i1 * (c10 + i1 * (c20 + c30 * i1)) + c01 * i2;
    out.stress = deviator(gradient);
    const Number mean = trace(diagonal) * (1.0 / 9.0);
    const auto   pair = [&](std::size_t a, std::size_t b) {
      return mean - (diagonal[a] + diagonal[b]) * (1.0 / 3.0) + w11 * slope[a] * slope[b];
    };
    out.moduli = {pair(0, 0) + diagonal[0],
                  pair(1, 1) + diagonal[1],
                  pair(2, 2) + diagonal[2],
                  pair(0, 1),
                  pair(0, 2),
                  pair(1, 2)};
    return out;
  }

  /// Nominal stress [Pa] of the incompressible sheet pulled to `stretch` with the second stretch
  /// stretch^second: -1/2 uniaxial, 0 pure shear, 1 equibiaxial.
  double nominal_stress(double stretch, double second) const
  {
    const double l3 = std::pow(stretch, -1 - second), l2 = std::pow(stretch, second);
    const double i1 = stretch * stretch + l2 * l2 + l3 * l3 - 3;
    const double w1 = c10 + i1 * (2 * c20 + 3 * c30 * i1);
    return 2 * (stretch - l3 * l3 / stretch) * (w1 + c01 * l2 * l2);
  }
};

/// True when nominal stress grows with stretch in uniaxial loading from 1/limit to limit, and in pure shear
/// and equibiaxial loading from 1 to limit; looked at in steps of one per cent of stretch.
inline bool monotone(const IsochoricRubber &rubber, double limit = 2)
{
  for (const double second : {-0.5, 0.0, 1.0})
  {
    double last = -std::numeric_limits<double>::infinity();
    for (double stretch = second < 0 ? 1 / limit : 1.0; stretch <= limit * 1.0001; stretch *= 1.01)
    {
      const double stress = rubber.nominal_stress(stretch, second);
      if (!(stress > last))
        return false;
      last = stress;
    }
  }
  return true;
}

/// Throws InvalidParameter when the rubber is not stiff at rest or softens before stretch 2.
inline void check(const IsochoricRubber &rubber)
{
  require_positive("rubber shear modulus 2 (c10 + c01)", rubber.shear_modulus());
  require(std::isfinite(rubber.c20), "c20", rubber.c20, "a finite number");
  require(std::isfinite(rubber.c30), "c30", rubber.c30, "a finite number");
  require(monotone(rubber), "c10", rubber.c10,
          "coefficients whose stress rises all the way to stretch 2 (c20, c30 or c01 make it fall)");
}
} // namespace solemech::materials
