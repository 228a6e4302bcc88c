// SPDX-License-Identifier: Apache-2.0
#include "solver/models/contact_stiffness.h"

#include "solver/models/striker.h"
#include "solver/part_law.h"

#include <algorithm>
#include <limits>

namespace solemech::solver
{
namespace
{
/// Pressure of a bench blow over the confined modulus of the softest layer.
constexpr double bench_pressure = 1.0 / 3;

double softest_modulus(const Case &input)
{
  double softest = std::numeric_limits<double>::infinity();
  for (const auto &layer : input.layers)
    softest = std::min(softest, layer.area_share * stiffest_confined_modulus(layer.material, input));
  return softest;
}
} // namespace

ContactStiffness contact_stiffness(const Case &input, const Tup &tup, double expected_force,
                                   double penetration)
{
  ContactStiffness stiffness{softest_modulus(input), 1, penetration};
  if (expected_force > 0)
  {
    const double sink = expected_force / column_stiffness(input, tup);
    const double area =
      loaded_area(input.plug.section, std::min(input.plug.radius, striker_reach(tup, sink)));
    stiffness.load_share =
      std::min(1.0, expected_force / area / (bench_pressure * stiffness.softest_modulus));
  }
  return stiffness;
}
} // namespace solemech::solver
