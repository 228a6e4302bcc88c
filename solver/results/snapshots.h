// SPDX-License-Identifier: Apache-2.0
// Pictures of a section in time: its shape and the fields of its parts, and the striker above it.
#pragma once

#include "solver/contributions/solid_body.h"
#include "solver/mesh/discretisation.h"
#include "solver/results/result.h"
#include "solver/time/generalised_alpha.h"

#include <string>
#include <vector>

namespace solemech::solver
{
/// A striker as pictures show it.
struct ShownStriker
{
  std::vector<std::array<double, 2>> outline;    ///< right half, relative to its lowest point [m]
  int                                height = 0; ///< its unknown
  double                             level = 0;  ///< of its lowest point when that is zero [m]
};

class Snapshots
{
public:
  /// @param bodies    one a part, in the order of the mesh's parts
  /// @param interval  at least this long between pictures [s]; <= 0: none
  Snapshots(const Discretisation &mesh, std::vector<SolidBody *> bodies, ShownStriker striker,
            double interval);

  /// Takes one when it is due, or asked for.
  void look(const TimeIntegrator &state, double time, bool is_asked_for);

  /// From here on at least `interval` [s] apart; without effect when none are wanted.
  void space(double interval)
  {
    if (interval_ > 0)
      interval_ = interval;
  }

  Picture moved() { return std::move(picture_); }

private:
  const Discretisation    &mesh_;
  std::vector<SolidBody *> bodies_;
  ShownStriker             striker_;
  double                   interval_, last_ = -1e9;
  Picture                  picture_;

  void take(const TimeIntegrator &state, double time);
  void add_shape(const Vector &x, Snapshot &shot) const;
  void add_fields(const Vector &x, Snapshot &shot) const;
};
} // namespace solemech::solver
