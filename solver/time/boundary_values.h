// SPDX-License-Identifier: Apache-2.0
// Values that unknowns are led through, as functions of time: freedoms of rigid bodies, displacements of
// nodes. A step meets them at its end, so that the rows of their unknowns become those of the identity and
// the force that leads them is what the balance is short of there.
#pragma once

#include "solver/contribution.h"

#include <functional>
#include <map>
#include <vector>

namespace solemech::solver
{
/// Value of an unknown at a time [s]: [m, rad].
using ValueAt = std::function<double(double time)>;

/// An unknown and where it is led to.
struct LedUnknown
{
  int    unknown;
  double value;
};

class BoundaryValues
{
public:
  /// From the next step on.
  void lead(int unknown, ValueAt value) { values_[unknown] = std::move(value); }
  void lead(const std::vector<int> &unknowns, const ValueAt &value)
  {
    for (const int unknown : unknowns)
      lead(unknown, value);
  }
  void hold(int unknown, double value)
  {
    lead(unknown, [value](double) { return value; });
  }
  void release(int unknown) { values_.erase(unknown); }

  /// All that are led, in their order.
  std::vector<LedUnknown> at(double time) const
  {
    std::vector<LedUnknown> led;
    for (const auto &[unknown, value] : values_)
      led.push_back({unknown, value(time)});
    return led;
  }

private:
  std::map<int, ValueAt> values_;
};

/// Makes rows and columns of led unknowns those of the identity.
void constrain(const std::vector<LedUnknown> &led, const SparseMatrix &pattern, Tangent &tangent);

/// The whole tangent, borders and rank-one terms included, times a vector.
Vector product(const Tangent &tangent, const SparseMatrix &pattern, const Vector &vector);
} // namespace solemech::solver
