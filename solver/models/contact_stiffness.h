// SPDX-License-Identifier: Apache-2.0
// How firmly contact keeps faces of a stack apart: by the softest layer, and more firmly under a weak load,
// whose penetration has to be small against a smaller sink.
#pragma once

#include "solver/case.h"

namespace solemech::solver
{
struct ContactStiffness
{
  double softest_modulus = 0; ///< of the layers, under lateral confinement [Pa]
  double load_share = 1;      ///< expected pressure over that of a bench blow, at most 1 [-]
  double penetration = 0;     ///< share of a contact length, see Resolution [-]

  /// Against a contact of this length [Pa/m2].
  double penalty(double length) const
  {
    const double depth = penetration * length;
    return softest_modulus / (load_share * depth * depth);
  }
};

/// @param expected_force  about the greatest on the striker [N]; 0: that of a bench blow
ContactStiffness contact_stiffness(const Case &input, const Tup &tup, double expected_force,
                                   double penetration);
} // namespace solemech::solver
