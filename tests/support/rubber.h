// SPDX-License-Identifier: Apache-2.0
// A rubber for tests: neo-Hookean, near-incompressible, without loss.
#pragma once

#include "materials/material.h"

#include <string>

namespace solemech::tests
{
/// @param youngs_modulus, bulk_modulus  [Pa]
inline materials::Material rubber(double youngs_modulus, double bulk_modulus = 1e9,
                                  const std::string &name = "rubber")
{
  materials::RubberData data;
  data.c10 = youngs_modulus / 6;
  data.bulk_modulus = bulk_modulus;
  materials::Material material;
  material.name = name, material.family = "rubber", material.density = 1150, material.data = data;
  return material;
}
} // namespace solemech::tests
