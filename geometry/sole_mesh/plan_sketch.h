// SPDX-License-Identifier: Apache-2.0
// A plan mesh while it is made: its nodes know the curve that they may slide on, its cells the sides that
// they should have. Only the sources of plan_mesh.h include it.
#pragma once

#include "geometry/sole_mesh/plan_mesh.h"

#include <cmath>

namespace solemech::geometry::plan
{
/// A curve that nodes slide on: the outline, a line from side to side, a ring. Any parameter of order 1.
using Rail = std::function<PlanPoint(double)>;

constexpr unsigned no_rail = static_cast<unsigned>(-1);

struct Node
{
  PlanPoint at{};           ///< [m]
  unsigned  rail = no_rail; ///< number in Sketch::rails
  double    place = 0;      ///< parameter on the rail
  bool      fixed = false;
};

struct Cell
{
  std::array<unsigned, 4> corners{}; ///< as in PlanCell
  std::array<double, 2>   wanted{};  ///< lengths of its sides, of which the ratio counts [m]
};

struct Sketch
{
  std::vector<Node> nodes;
  std::vector<Cell> cells;
  std::vector<Rail> rails;
};

/// Corners of a cell counter-clockwise.
constexpr std::array<unsigned, 4> around{0, 1, 3, 2};

inline PlanPoint operator-(const PlanPoint &a, const PlanPoint &b)
{
  return {a[0] - b[0], a[1] - b[1]};
}

inline PlanPoint operator+(const PlanPoint &a, const PlanPoint &b)
{
  return {a[0] + b[0], a[1] + b[1]};
}

inline PlanPoint operator*(double factor, const PlanPoint &a)
{
  return {factor * a[0], factor * a[1]};
}

inline double dot(const PlanPoint &a, const PlanPoint &b)
{
  return a[0] * b[0] + a[1] * b[1];
}

inline double cross(const PlanPoint &a, const PlanPoint &b)
{
  return a[0] * b[1] - a[1] * b[0];
}

inline double length(const PlanPoint &a)
{
  return std::sqrt(dot(a, a));
}

inline PlanPoint between(const PlanPoint &a, const PlanPoint &b, double share)
{
  return a + share * (b - a);
}

/// Derivative of a curve by its parameter, by central differences of 1e-5: exact to nine digits on curves
/// that bend over tenths of their length, which is far more than a step of the shaping needs.
inline PlanPoint slope(const Rail &rail, double place)
{
  constexpr double step = 1e-5;
  return (0.5 / step) * (rail(place + step) - rail(place - step));
}

/// Smallest sine between two edges at a corner, over all cells.
double corner_quality(const Sketch &sketch);

/// Sides that cells have now become the ones that they should have.
void want_present_sides(Sketch &sketch);
} // namespace solemech::geometry::plan
