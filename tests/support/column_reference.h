// SPDX-License-Identifier: Apache-2.0
// A homogeneous, massless foam column between frictionless plates under a falling mass or a press: the
// finite-element program must find the same curves when its stack is one layer that can spread freely.
// Motion-driven runs: fourth-order Runge-Kutta on compression, speed and viscous strains, with the lateral
// strain solved from zero lateral stress at every stage and the steps cut at each onset or end of slip and at
// contact loss. Force-driven runs (rest between hits, force pulses): implicit steps with exact decay.
#pragma once

#include "tests/support/column_foam.h"

#include <functional>
#include <vector>

namespace solemech::tests
{
enum class Lateral {
  free,         ///< both lateral stresses zero: a free-sided plug
  plane_strain, ///< one lateral stress zero, the other lateral strain zero
  confined      ///< no lateral strain
};

struct Column
{
  double  area = 0;   ///< at rest [m2]
  double  height = 0; ///< at rest [m]
  Lateral lateral = Lateral::free;
};

struct ColumnDrop
{
  double mass = 0;          ///< [kg]
  double touch_speed = 0;   ///< of the first hit [m/s]; the drop height is touch_speed^2/(2 gravity)
  double gravity = 9.80665; ///< [m/s2]
  int    n_hits = 1;
  double rest = 30; ///< free recovery from contact loss to the next touch [s]
  /// Later hits: true, the weight is raised to the drop height above the surface as it is then; false, above
  /// the surface of the new column, so that it falls further by the set that is left.
  bool   from_current_surface = false;
  double step = 10e-6; ///< largest time step [s]; halving it moves no reading by 1e-7
};

/// One contact. Compression is measured from the new, unloaded column and speed is positive downwards.
struct ColumnHit
{
  std::vector<double> time, force, compression, speed;      ///< [s], [N], [m], [m/s]
  double              touch_compression = 0;                ///< set left at first touch [m]
  double              touch_speed = 0;                      ///< [m/s]
  double              peak_force = 0, peak_compression = 0; ///< [N], [m]
  double              time_of_peak_force = 0;               ///< [s]
  double              contact_time = 0;                     ///< to force zero [s]
  double              loss_compression = 0, loss_speed = 0; ///< at contact loss [m], upward speed [m/s]
  double              return_by_height = 0, return_by_speed = 0, return_by_loop = 0; ///< [-]
  double              stored_at_touch = 0, stored_at_loss = 0;                       ///< in the column [J]
  double relaxed = 0, slipped = 0, recovered = 0; ///< dissipated by branch kind during contact [J]
  double residual = 0;                            ///< what the energy balance leaves open [J]
};

/// Successive hits of a falling weight. Throws std::runtime_error when contact does not end within 2 s or the
/// column is crushed to its polymer.
std::vector<ColumnHit> column_drop(const ColumnFoam &foam, const Column &column, const ColumnDrop &drop);

/// The three returns of a falling mass from the speeds and compressions of a hit.
void fill_returns(ColumnHit &hit, double mass, double gravity);

/// Press driven as x(t) = peak sin(pi t/duration) until the plate leaves the column (speed returns stay
/// zero).
ColumnHit column_press(const ColumnFoam &foam, const Column &column, double peak_compression, double duration,
                       double step);

/// Column under a given force history [N] from t = 0, `n_steps` equal steps; force <= 0 counts as no contact.
/// Loop areas and peaks are filled, speeds are not.
ColumnHit column_force_pulse(const ColumnFoam &foam, const Column &column,
                             const std::function<double(double)> &force, double duration, int n_steps);
} // namespace solemech::tests
