// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/numbering.h"

#include <algorithm>

namespace solemech::solver
{
int Numbering::slot(int row, int column) const
{
  const int *first = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column];
  const int *last = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column + 1];
  return static_cast<int>(std::lower_bound(first, last, row) - pattern_.innerIndexPtr());
}
} // namespace solemech::solver
