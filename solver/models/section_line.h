// SPDX-License-Identifier: Apache-2.0
// A line of the mesh along a section, face by face: how far it is stretched and how it is bent. Slopes of
// quadratic faces are best at their two Gauss points, one order better than elsewhere (Barlow, Int. J. Numer.
// Meth. Eng. 10, 1976), so they are read there.
#pragma once

#include "solver/models/section_model.h"

#include <array>
#include <vector>

namespace solemech::solver
{
class SectionLine
{
public:
  enum class Side { lower, upper };

  /// The lower or upper faces of these cells, of one row.
  SectionLine(const Discretisation &mesh, const std::vector<std::size_t> &cells, Side side);
  /// The lower or upper face of the whole section.
  SectionLine(const Discretisation &mesh, Side side);

  struct At
  {
    double x;      ///< along the foot, unloaded [m]
    double strain; ///< logarithmic, along the line [-]
    double turn;   ///< of its tangent, from x towards z [rad]
    double way;    ///< along the unloaded line, from its first end [m]
  };
  /// From the heel on, at the unknowns x.
  std::vector<At> at(const Vector &x) const;

  /// Displacement of the line at a place along the foot [m].
  Point displacement(const Vector &x, double place) const;

  /// Places of the unloaded line, closely spaced [m].
  std::vector<Point> drawn() const;

private:
  const Discretisation    *mesh_;
  std::vector<EdgeNumbers> edges_; ///< from the heel on

  void  sort();
  Point displacement(const Vector &x, unsigned node) const;
};

/// Where along the foot a line is bent most, as a mean over `window` [m].
double most_bent(const std::vector<SectionLine::At> &line, double window);
} // namespace solemech::solver
