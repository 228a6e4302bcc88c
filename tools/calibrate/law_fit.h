// SPDX-License-Identifier: Apache-2.0
// The laws of a library material turned until the virtual bench reads what its source states: the stiffness
// for the hardness of a foam, the slipping shares for the return of the press pulse, the relaxing shares for
// the ball. Each number is a common factor on a kind of numbers; caps, times, exponents and the proportions
// of the shares stay as the library states them. A material that states nothing is left alone. Bracketing and
// root by Boost.Math (Alefeld, Potra & Shi 1995, ACM TOMS algorithm 748).
#pragma once

#include "materials/material.h"

namespace solemech::tools
{
struct LawFit
{
  materials::Material material; ///< with the fitted numbers, rounded as the library prints them
  double stiffness_factor = 1, slipping_factor = 1, relaxing_factor = 1; ///< on what was there [-]

  bool changed_nothing() const
  {
    return stiffness_factor == 1 && slipping_factor == 1 && relaxing_factor == 1;
  }
};

/// Digits of a share as the library prints it: hundredths of a per cent.
double rounded_share(double share);

/// How far a reading may be from the stated one: half of what tables print. A ball is read to 1 % of its fall
/// (ISO 8307), a gauge by hand to three points.
constexpr double share_tolerance = 5e-3; ///< [-]
constexpr double gauge_tolerance = 0.5;  ///< [points]

/// Fits the laws of a material to the readings that it states.
///
/// As many factors as stated readings are turned together. Where one return alone is stated, ball or pulse,
/// the slipping shares carry it; if the relaxing ones lose more than that by themselves, the slipping ones
/// become zero and the relaxing ones are scaled. A rubber has relaxing branches only; its stiffness follows
/// from its hardness by a published relation and is not turned.
/// @param accuracy  of the readings [-]
/// @throws std::invalid_argument for a foam without branches to scale, std::runtime_error when no factors in
/// reach give the readings, solver::RunFailed
LawFit fit_law(const materials::Material &material, double accuracy);
} // namespace solemech::tools
