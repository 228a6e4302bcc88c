// SPDX-License-Identifier: Apache-2.0
// A rubber or film put together from its data at one temperature: isochoric Yeoh / Mooney-Rivlin part,
// volume part, relaxing branches on the isochoric part. Shares of branches refer to the small-strain shear
// modulus.
#pragma once

#include "materials/material.h"
#include "materials/relaxing_branch.h"
#include "materials/temperature.h"
#include "materials/volumetric.h"
#include "materials/yeoh.h"

namespace solemech::materials
{
struct Rubber
{
  IsochoricRubber     isochoric;
  Volumetric          volumetric;
  std::vector<Branch> branches; ///< bulk modulus 0
};

/// Builds a rubber at `temperature` [K]. Throws InvalidParameter, also when kappa <= 20 mu (then it is a
/// foam).
inline Rubber make_rubber(const RubberData &data, const ThermalData &thermal, double temperature)
{
  const double f = modulus_factor(thermal, temperature), slower = time_shift(thermal, temperature);
  Rubber       rubber{{f * data.c10, f * data.c20, f * data.c30, f * data.c01}, {data.bulk_modulus}, {}};
  check(rubber.isochoric);
  const double mu = rubber.isochoric.shear_modulus();
  require(std::isfinite(data.bulk_modulus) && data.bulk_modulus > 20 * mu, "rubber bulk modulus",
          data.bulk_modulus, "more than 20 x the shear modulus");
  for (const auto &term : data.relaxing)
  {
    require_not_negative("relaxing share", term.share);
    if (term.share > 0)
      rubber.branches.push_back(RelaxingBranch(term.share * mu, 0, slower * term.relaxation_time));
  }
  return rubber;
}
} // namespace solemech::materials
