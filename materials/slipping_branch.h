// SPDX-License-Identifier: Apache-2.0
// A rate-independent branch: elastic up to the cap c of r = sqrt(2 W/(g mu)), sliding beyond; a full cycle
// of amplitude r_max > c loses 4 g mu c (r_max - c) at any speed (C.F. Jenkin 1922, G. Masing 1926; from
// memory). Its elastic strain also fades with a recovery time, so that set between hits comes back.
#pragma once

#include "materials/branch.h"

namespace solemech::materials
{
struct SlippingBranch : Branch
{
  /// @param shear  g mu [Pa], > 0   @param bulk  g kappa [Pa]   @param slip_cap  c [-], > 0
  /// @param recovery_time  [s], > 0; infinity switches recovery off.  Throws InvalidParameter.
  SlippingBranch(double shear, double bulk, double slip_cap, double recovery_time)
    : Branch{shear, bulk, recovery_time, slip_cap}
  {
    require_positive("slipping branch shear modulus", shear);
    require_not_negative("slipping branch bulk modulus", bulk);
    require(slip_cap > 0, "slip cap", slip_cap, "a log-strain norm above 0 (0.01 to 0.3 for foams)");
    require(recovery_time > 0, "recovery time", recovery_time, "a time above 0");
  }
};
} // namespace solemech::materials
