// SPDX-License-Identifier: Apache-2.0
// One number fitted to one reading: the common factor on a foam's slipping shares that makes the press pulse
// return what it should. Caps, the proportions of the shares and the relaxing branches stay as the library
// states them. Bracketing and root by Boost.Math (Alefeld, Potra & Shi 1995, ACM TOMS algorithm 748).
#pragma once

#include "materials/material.h"

namespace solemech::tools
{
struct LossFit
{
  materials::Material material;            ///< with the fitted shares, rounded as the library prints them
  double              slipping_factor = 1; ///< on the slipping shares that were there before [-]
  double              relaxing_factor = 1; ///< on the relaxing shares [-]; 1 unless these alone lose too much
};

/// Digits of a share as the library prints it: hundredths of a per cent.
double rounded_share(double share);

/// Fits a foam's loss to a pulse return.
/// @param material     a foam with slipping branches, whose shares are the first guess
/// @param loop_return  wanted [-]
/// @param accuracy     of the pulse [-]
/// If the relaxing branches alone return less than wanted, slipping shares become zero and the relaxing ones
/// are scaled instead.
/// @throws std::invalid_argument for a material without branches to scale, std::runtime_error when no factor
/// in reach gives the return, solver::RunFailed
LossFit fit_loss(const materials::Material &material, double loop_return, double accuracy);
} // namespace solemech::tools
