// SPDX-License-Identifier: Apache-2.0
// Numbers of a case that are known with a doubt only, and how these doubts go together. The solver does not
// look at them: whoever asks for a band runs the case again with the numbers moved. Plain data.
#pragma once

#include <string>
#include <vector>

namespace solemech::solver
{
enum class DoubtedNumber { modulus, loss, density, thickness, gauge_pressure, height, mass, guide_loss };

/// One number, doubted in its logarithm: the case holds its middle value.
struct Doubt
{
  DoubtedNumber       number = DoubtedNumber::thickness;
  std::string         of;         ///< material (modulus, loss, density) or layer; empty: the rig
  double              spread = 0; ///< standard deviation of the logarithm [-]
  std::vector<double> together;   ///< correlation with each doubt before this one, -1..1

  bool operator==(const Doubt &) const = default;
};
} // namespace solemech::solver
