// SPDX-License-Identifier: Apache-2.0
// A viscoelastic branch: its elastic strain fades with one time, in shape and volume alike. The viscosities
// are mu tau and kappa tau (Reese & Govindjee 1998); dissipation 2 W/tau is never negative. With an
// energy like the network's, of high exponent, the unloading branch would pull back hard and overstate the
// loss; the energy quadratic in log strain keeps tension and compression alike.
#pragma once

#include "materials/branch.h"

namespace solemech::materials
{
struct RelaxingBranch : Branch
{
  /// @param shear  g mu [Pa], > 0   @param bulk  g kappa [Pa], 0 for isochoric branches   @param time  tau
  /// [s], > 0 Throws InvalidParameter.
  RelaxingBranch(double shear, double bulk, double time) : Branch{shear, bulk, time}
  {
    require_positive("relaxing branch shear modulus", shear);
    require_not_negative("relaxing branch bulk modulus", bulk);
    require(time > 0, "relaxation time", time, "a time above 0");
  }
};
} // namespace solemech::materials
