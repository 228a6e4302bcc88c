// SPDX-License-Identifier: Apache-2.0
// Where a layer lies in plan: the outline of the sole, or one of its own, drawn in along its normal by an
// inset, cut off where the layer begins and ends, less the slots of a plate. Forks, horseshoes and plates of
// the waist alone follow from slots and ends.
#pragma once

#include "geometry/sole/outline.h"

#include <array>
#include <functional>
#include <optional>
#include <vector>

namespace solemech::geometry
{
/// A slot in a plate: straight, its width may change along it.
struct SlotShape
{
  double                from = 0, to = 0;       ///< x [m]; open where it reaches the end of the plate
  std::array<double, 2> middle{};               ///< y of its middle line at both ends [m]
  std::array<double, 2> width{};                ///< there [m]
  Span                  across(double x) const; ///< nothing outside from .. to
};

class PlanRegion
{
public:
  /// @param edge   of the sole, or of the layer itself
  /// @param inset  distance of the layer's edge from it over x, along its normal; none: no inset
  PlanRegion(const Outline &edge, const std::function<double(double)> &inset, double from, double to,
             std::vector<SlotShape> slots = {});

  /// Where it begins and ends along the foot [m].
  double from() const { return from_; }
  double to() const { return to_; }

  /// From edge to edge at x, as if there were no slots.
  Span whole(double x) const;
  /// What slots leave of it, medial side first.
  std::vector<Span> pieces(double x) const;

  bool   covers(const PlanPoint &point) const;
  double area() const;

  /// Integral over the region of a function of x, for volumes.
  double integral(const std::function<double(double)> &f) const;

  const std::vector<SlotShape> &slots() const { return slots_; }

private:
  double                      from_, to_;
  std::function<Span(double)> edge_;
  std::vector<SlotShape>      slots_;
};
} // namespace solemech::geometry
