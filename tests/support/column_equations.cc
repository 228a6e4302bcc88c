// SPDX-License-Identifier: Apache-2.0
#include "tests/support/column_equations.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
constexpr double strain_tolerance = 1e-12; ///< of the Newton iterations, far below every reading

ColumnState sum(const ColumnState &a, double factor, const ColumnState &b)
{
  ColumnState c = a;
  c.compression += factor * b.compression;
  c.speed += factor * b.speed;
  for (std::size_t j = 0; j < c.viscous.size(); ++j)
    for (int k = 0; k < 3; ++k)
      c.viscous[j][k] += factor * b.viscous[j][k];
  c.relaxed += factor * b.relaxed;
  c.slipped += factor * b.slipped;
  c.recovered += factor * b.recovered;
  return c;
}

Strain operator+(const Strain &a, const Strain &b)
{
  return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}

Strain operator*(double factor, const Strain &a)
{
  return {factor * a[0], factor * a[1], factor * a[2]};
}

} // namespace

ColumnEquations::ColumnEquations(const ColumnFoam &foam, const Column &column)
  : foam_(foam), column_(column), metric_(branch_metric(foam)), mu_(foam.shear_modulus()),
    spread_(column.lateral == Lateral::free           ? Strain{0, 1, 1}
            : column.lateral == Lateral::plane_strain ? Strain{0, 1, 0}
                                                      : Strain{0, 0, 0})
{
}

ColumnState ColumnEquations::rest() const
{
  return {0, 0, std::vector<Strain>(foam_.n_branches(), Strain{}), 0, 0, 0};
}

/// Total strain for a compression, with the lateral stress brought to zero.
Strain ColumnEquations::total_strain(const ColumnState &state) const
{
  const double axial = std::log1p(-state.compression / column_.height);
  if (!(axial > -5))
    throw std::runtime_error("reference column crushed");
  Strain strain = axial * Strain{1, 0, 0} + lateral_ * spread_;
  for (int i = 0; i < 60 && column_.lateral != Lateral::confined; ++i)
  {
    const FoamPoint point = total(strain, state.viscous);
    double          slope = 0;
    for (int a = 0; a < 3; ++a)
      slope += spread_[a] * dot(point.moduli[a], spread_);
    const double change = -dot(spread_, point.stress) / slope;
    strain = strain + change * spread_;
    if (std::abs(change) < strain_tolerance)
      break;
  }
  lateral_ = strain[1];
  return strain;
}

/// Stress, moduli and stored energy with all branches, viscous strains held.
FoamPoint ColumnEquations::total(const Strain &strain, const std::vector<Strain> &viscous) const
{
  FoamPoint point = equilibrium(foam_, strain);
  for (std::size_t j = 0; j < viscous.size(); ++j)
  {
    const double modulus = foam_.share(j) * mu_;
    const Strain elastic = strain + -1. * viscous[j], pull = times(metric_, elastic);
    point.energy += modulus * dot(elastic, pull) / 2;
    for (int a = 0; a < 3; ++a)
    {
      point.stress[a] += modulus * pull[a];
      for (int b = 0; b < 3; ++b)
        point.moduli[a][b] += modulus * metric_[a][b];
    }
  }
  return point;
}

/// Compressive force of the column [N].
double ColumnEquations::force(const ColumnState &state) const
{
  const Strain strain = total_strain(state);
  return -total(strain, state.viscous).stress[0] / std::exp(strain[0]) * column_.area;
}

double ColumnEquations::stored(const ColumnState &state) const
{
  return total(total_strain(state), state.viscous).energy * column_.area * column_.height;
}

double ColumnEquations::norm(const ColumnState &state, std::size_t branch) const
{
  return std::sqrt(squared_norm(metric_, total_strain(state) + -1. * state.viscous[branch]));
}

ColumnRates ColumnEquations::rates(double time, const ColumnState &state, const std::vector<bool> &slipping,
                                   const Acceleration &acceleration) const
{
  const Strain      strain = total_strain(state);
  const FoamPoint   point = total(strain, state.viscous);
  const double      force = -point.stress[0] / std::exp(strain[0]) * column_.area;
  const Strain      axial_rate{-state.speed / (column_.height - state.compression), 0, 0};
  const std::size_t n = state.viscous.size();

  // Lateral rate that keeps the lateral stress at zero while the branches decay and slip.
  double right = 0, slope = 0;
  for (int a = 0; a < 3; ++a)
  {
    right -= spread_[a] * dot(point.moduli[a], axial_rate);
    slope += spread_[a] * dot(point.moduli[a], spread_);
  }
  std::vector<Strain> elastic(n), pull(n);
  for (std::size_t j = 0; j < n; ++j)
  {
    elastic[j] = strain + -1. * state.viscous[j];
    pull[j] = times(metric_, elastic[j]);
    const double weight = foam_.share(j) * mu_ * dot(spread_, pull[j]);
    if (slipping[j])
    {
      const double c2 = foam_.cap(j) * foam_.cap(j);
      right += weight * dot(pull[j], axial_rate) / c2;
      slope -= weight * dot(pull[j], spread_) / c2;
    }
    else
      right += weight / foam_.decay_time(j);
  }
  const double lateral_rate = column_.lateral == Lateral::confined ? 0 : right / slope;
  const Strain strain_rate = axial_rate + lateral_rate * spread_;

  ColumnRates result{
    ColumnState{state.speed, acceleration(time, state.compression, force), std::vector<Strain>(n)},
    std::vector<double>(n, 0.)};
  for (std::size_t j = 0; j < n; ++j)
  {
    const double decay = 1 / foam_.decay_time(j), r2 = dot(elastic[j], pull[j]);
    if (slipping[j])
      result.slip[j] = dot(pull[j], strain_rate) / (foam_.cap(j) * foam_.cap(j)) - decay;
    result.change.viscous[j] = (decay + result.slip[j]) * elastic[j];
    (foam_.slips(j) ? result.change.recovered : result.change.relaxed) += foam_.share(j) * mu_ * r2 * decay;
    result.change.slipped += foam_.share(j) * mu_ * r2 * result.slip[j];
  }
  return result;
}

ColumnState ColumnEquations::runge_kutta(double time, double dt, const ColumnState &state,
                                         const std::vector<bool> &slipping,
                                         const Acceleration      &acceleration) const
{
  const ColumnState k1 = rates(time, state, slipping, acceleration).change;
  const ColumnState k2 = rates(time + dt / 2, sum(state, dt / 2, k1), slipping, acceleration).change;
  const ColumnState k3 = rates(time + dt / 2, sum(state, dt / 2, k2), slipping, acceleration).change;
  const ColumnState k4 = rates(time + dt, sum(state, dt, k3), slipping, acceleration).change;
  ColumnState       next = sum(sum(sum(sum(state, dt / 6, k1), dt / 3, k2), dt / 3, k3), dt / 6, k4);
  const Strain      strain = total_strain(next);
  for (std::size_t j = 0; j < slipping.size(); ++j)
    if (slipping[j]) // remove the drift off the cap
    {
      const Strain elastic = strain + -1. * next.viscous[j];
      const double scale = foam_.cap(j) / std::sqrt(squared_norm(metric_, elastic));
      next.viscous[j] = strain + -scale * elastic;
    }
  return next;
}

/// One implicit step under a force [N] at its end: strains ramp linearly, branches decay exactly on the
/// ramp, then return to their caps.
void ColumnEquations::force_step(double dt, double force_at_end, ColumnState &state) const
{
  const Strain        old = total_strain(state);
  const std::size_t   n = state.viscous.size();
  std::vector<Strain> elastic(n), trial_start(n);
  std::vector<double> ramp(n);
  for (std::size_t j = 0; j < n; ++j)
  {
    const double ratio = dt / foam_.decay_time(j);
    trial_start[j] = std::exp(-ratio) * (old + -1. * state.viscous[j]);
    ramp[j] = ratio == 0 ? 1 : -std::expm1(-ratio) / ratio;
  }
  Strain strain = old;
  for (int i = 0;; ++i)
  {
    FoamPoint point = equilibrium(foam_, strain);
    for (std::size_t j = 0; j < n; ++j)
    {
      const double modulus = foam_.share(j) * mu_;
      const Strain trial = trial_start[j] + ramp[j] * (strain + -1. * old), pull = times(metric_, trial);
      const double r = std::sqrt(dot(trial, pull));
      const bool   slip = r > foam_.cap(j);
      const double scale = slip ? foam_.cap(j) / r : 1;
      elastic[j] = scale * trial;
      for (int a = 0; a < 3; ++a)
      {
        point.stress[a] += modulus * scale * pull[a];
        for (int b = 0; b < 3; ++b)
          point.moduli[a][b] +=
            modulus * scale * ramp[j] * (metric_[a][b] - (slip ? pull[a] * pull[b] / (r * r) : 0));
      }
    }
    // Unknowns: axial and lateral strain; equations: nominal axial stress and lateral stress.
    const double nominal = -force_at_end / column_.area * std::exp(strain[0]);
    const double r0 = point.stress[0] - nominal, r1 = dot(spread_, point.stress);
    const Strain row = times(point.moduli, spread_);
    const double k00 = point.moduli[0][0] - nominal, k01 = row[0], k11 = dot(spread_, row);
    double       d0 = -r0 / k00, d1 = 0;
    if (column_.lateral != Lateral::confined)
    {
      const double determinant = k00 * k11 - k01 * k01;
      d0 = -(k11 * r0 - k01 * r1) / determinant;
      d1 = -(k00 * r1 - k01 * r0) / determinant;
    }
    const double shrink = std::min(1., 0.05 / std::max({std::abs(d0), std::abs(d1), 1e-300}));
    strain = strain + shrink * (Strain{d0, 0, 0} + d1 * spread_);
    if (std::max(std::abs(d0), std::abs(d1)) < strain_tolerance)
      break;
    if (i > 200)
      throw std::runtime_error("reference column: force step does not settle");
  }
  for (std::size_t j = 0; j < n; ++j)
    state.viscous[j] = strain + -1. * elastic[j];
  state.compression = -std::expm1(strain[0]) * column_.height;
  lateral_ = strain[1];
}

void ColumnEquations::recover_freely(double duration, ColumnState &state) const
{
  // Steps grow with the time passed: the fastest branches first, the slow ones at ease.
  constexpr double first_step = 1e-6, growth = 1e-3;
  for (double time = 0; time < duration;)
  {
    const double dt = std::min(std::max(first_step, growth * time), duration - time);
    force_step(dt, 0, state);
    time = duration - time <= dt ? duration : time + dt;
  }
}
} // namespace solemech::tests
