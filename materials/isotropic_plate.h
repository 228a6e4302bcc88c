// SPDX-License-Identifier: Apache-2.0
// A plate, board or cork put together from its data at one temperature: Hencky elasticity from Young's
// modulus and Poisson ratio, with relaxing branches that share its moduli.
#pragma once

#include "materials/hencky.h"
#include "materials/material.h"
#include "materials/relaxing_branch.h"
#include "materials/temperature.h"

namespace solemech::materials
{
struct IsotropicPlate
{
  Hencky              elastic;
  std::vector<Branch> branches;

  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    return elastic.response(strains);
  }
};

/// Builds a plate at `temperature` [K]. Throws InvalidParameter.
inline IsotropicPlate make_plate(const PlateData &data, const ThermalData &thermal, double temperature)
{
  const double   f = modulus_factor(thermal, temperature), slower = time_shift(thermal, temperature);
  IsotropicPlate plate{hencky_from_young(f * data.youngs_modulus, data.poisson_ratio), {}};
  for (const auto &term : data.relaxing)
  {
    require_not_negative("relaxing share", term.share);
    if (term.share > 0)
      plate.branches.push_back(RelaxingBranch(term.share * plate.elastic.shear_modulus,
                                              term.share * plate.elastic.bulk_modulus,
                                              slower * term.relaxation_time));
  }
  return plate;
}
} // namespace solemech::materials
