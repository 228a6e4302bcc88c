// SPDX-License-Identifier: Apache-2.0
// The yardstick of the benchmark: the bench problem B1 as a plain program on deal.II alone, timed on the same
// machine in the same run. Nothing of the product is used.
#pragma once

namespace solemech::tests
{
struct YardstickBlow
{
  double   peak_force = 0, compression = 0, return_by_speed = 0; ///< smoothed [N], [m], [-]
  unsigned unknowns = 0, steps = 0, iterations = 0;
  double   assembly_seconds = 0; ///< processor time [s]
  unsigned points = 0;           ///< integration points of the foam
};

/// B1 on `columns` x `rows` quadratic elements, graded to the edge and the face of the weight, in steps of
/// `dt` [s].
YardstickBlow yardstick_blow(unsigned columns, unsigned rows, double dt);
} // namespace solemech::tests
