// SPDX-License-Identifier: Apache-2.0
// Three invented foams of growing complexity and the bench column they are dropped on (22.5 mm radius, 25 mm
// high, 8.5 kg, 5 J, 9.81 m/s2).
#pragma once

#include "tests/support/column_reference.h"

#include <cmath>
#include <numbers>

namespace solemech::tests
{
inline ColumnFoam elastic_foam()
{
  ColumnFoam foam;
  foam.network = {{0.60e6, 8, 0.125}};
  return foam;
}

inline ColumnFoam relaxing_foam()
{
  ColumnFoam foam = elastic_foam();
  foam.relaxing = {{0.30, 2e-3}, {0.20, 20e-3}};
  return foam;
}

inline ColumnFoam full_foam()
{
  ColumnFoam foam = relaxing_foam();
  foam.relative_density = 0.18;
  foam.densification_modulus = 30e3;
  foam.slipping = {{0.30, 0.02}, {0.30, 0.06}, {0.30, 0.15}};
  return foam;
}

inline Column bench_column()
{
  return {std::numbers::pi * 22.5e-3 * 22.5e-3, 25e-3};
}

inline ColumnDrop bench_drop()
{
  return {.mass = 8.5, .touch_speed = std::sqrt(2 * 5.0 / 8.5), .gravity = 9.81};
}
} // namespace solemech::tests
