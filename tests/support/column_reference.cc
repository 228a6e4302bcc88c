// SPDX-License-Identifier: Apache-2.0
#include "tests/support/column_reference.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
constexpr double lateral_tolerance = 1e-12;  ///< on the lateral strain, far below every reading
constexpr double longest_contact   = 2;      ///< of a drop [s]

/// Everything with memory: motion of the plate, viscous strain per branch, dissipated energies.
struct State
{
  double              compression = 0, speed = 0;
  std::vector<Strain> viscous;
  double              relaxed = 0, slipped = 0, recovered = 0;  ///< per volume [J/m3]
};

State sum(const State &a, double factor, const State &b)
{
  State c = a;
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

/// The column as a set of equations; holds no state of its own but the last lateral strain as a first guess.
class ColumnEquations
{
public:
  using Acceleration = std::function<double(double time, double compression, double force)>;

  ColumnEquations(const ColumnFoam &foam, const Column &column)
    : foam_(foam)
    , column_(column)
    , metric_(branch_metric(foam))
    , mu_(foam.shear_modulus())
    , spread_(column.lateral == Lateral::free           ? Strain{0, 1, 1}
              : column.lateral == Lateral::plane_strain ? Strain{0, 1, 0}
                                                        : Strain{0, 0, 0})
  {}

  /// Total strain for a compression, with the lateral stress brought to zero.
  Strain total_strain(const State &state) const
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
      strain              = strain + change * spread_;
      if (std::abs(change) < lateral_tolerance)
        break;
    }
    lateral_ = strain[1];
    return strain;
  }

  /// Stress, moduli and stored energy with all branches, viscous strains held.
  FoamPoint total(const Strain &strain, const std::vector<Strain> &viscous) const
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
  double force(const State &state) const
  {
    const Strain strain = total_strain(state);
    return -total(strain, state.viscous).stress[0] / std::exp(strain[0]) * column_.area;
  }

  double stored(const State &state) const
  {
    return total(total_strain(state), state.viscous).energy * column_.area * column_.height;
  }

  double norm(const State &state, std::size_t branch) const
  {
    return std::sqrt(squared_norm(metric_, total_strain(state) + -1. * state.viscous[branch]));
  }

  /// Slip rates L_j [1/s] of the branches flagged as slipping; the others get their plain decay.
  struct Rates
  {
    State               change;
    std::vector<double> slip;
  };
  Rates rates(double time, const State &state, const std::vector<bool> &slipping,
              const Acceleration &acceleration) const
  {
    const Strain    strain = total_strain(state);
    const FoamPoint point  = total(strain, state.viscous);
    const double    force  = -point.stress[0] / std::exp(strain[0]) * column_.area;
    const Strain    axial_rate{-state.speed / (column_.height - state.compression), 0, 0};
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
      elastic[j]          = strain + -1. * state.viscous[j];
      pull[j]             = times(metric_, elastic[j]);
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
    const Strain strain_rate  = axial_rate + lateral_rate * spread_;

    Rates result{State{state.speed, acceleration(time, state.compression, force), std::vector<Strain>(n)},
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

  State runge_kutta(double time, double dt, const State &state, const std::vector<bool> &slipping,
                    const Acceleration &acceleration) const
  {
    const State k1 = rates(time, state, slipping, acceleration).change;
    const State k2 = rates(time + dt / 2, sum(state, dt / 2, k1), slipping, acceleration).change;
    const State k3 = rates(time + dt / 2, sum(state, dt / 2, k2), slipping, acceleration).change;
    const State k4 = rates(time + dt, sum(state, dt, k3), slipping, acceleration).change;
    State       next = sum(sum(sum(sum(state, dt / 6, k1), dt / 3, k2), dt / 3, k3), dt / 6, k4);
    const Strain strain = total_strain(next);
    for (std::size_t j = 0; j < slipping.size(); ++j)
      if (slipping[j])  // remove the drift off the cap
      {
        const Strain elastic = strain + -1. * next.viscous[j];
        const double scale   = foam_.cap(j) / std::sqrt(squared_norm(metric_, elastic));
        next.viscous[j]      = strain + -scale * elastic;
      }
    return next;
  }

  /// One implicit step under a force [N] at its end: strains ramp linearly, branches decay exactly on the
  /// ramp, then return to their caps.
  void force_step(double dt, double force_at_end, State &state) const
  {
    const Strain        old = total_strain(state);
    const std::size_t   n   = state.viscous.size();
    std::vector<Strain> elastic(n), trial_start(n);
    std::vector<double> ramp(n);
    for (std::size_t j = 0; j < n; ++j)
    {
      const double ratio = dt / foam_.decay_time(j);
      trial_start[j]     = std::exp(-ratio) * (old + -1. * state.viscous[j]);
      ramp[j]            = ratio == 0 ? 1 : -std::expm1(-ratio) / ratio;
    }
    Strain strain = old;
    for (int i = 0;; ++i)
    {
      FoamPoint point = equilibrium(foam_, strain);
      for (std::size_t j = 0; j < n; ++j)
      {
        const double modulus = foam_.share(j) * mu_;
        const Strain trial = trial_start[j] + ramp[j] * (strain + -1. * old), pull = times(metric_, trial);
        const double r     = std::sqrt(dot(trial, pull));
        const bool   slip  = r > foam_.cap(j);
        const double scale = slip ? foam_.cap(j) / r : 1;
        elastic[j]         = scale * trial;
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
        d0                       = -(k11 * r0 - k01 * r1) / determinant;
        d1                       = -(k00 * r1 - k01 * r0) / determinant;
      }
      const double shrink = std::min(1., 0.05 / std::max({std::abs(d0), std::abs(d1), 1e-300}));
      strain              = strain + shrink * (Strain{d0, 0, 0} + d1 * spread_);
      if (std::max(std::abs(d0), std::abs(d1)) < lateral_tolerance)
        break;
      if (i > 200)
        throw std::runtime_error("reference column: force step does not settle");
    }
    for (std::size_t j = 0; j < n; ++j)
      state.viscous[j] = strain + -1. * elastic[j];
    state.compression = -std::expm1(strain[0]) * column_.height;
    lateral_          = strain[1];
  }

  const ColumnFoam &foam() const { return foam_; }
  double            volume() const { return column_.area * column_.height; }

private:
  ColumnFoam                           foam_;
  Column                               column_;
  std::array<std::array<double, 3>, 3> metric_;
  double                               mu_;
  Strain                               spread_;  ///< direction of the free lateral strain
  mutable double                       lateral_ = 0;
};

/// Integrates one contact until the force is zero; `state` is left at contact loss.
ColumnHit contact(const ColumnEquations &column, const ColumnEquations::Acceleration &acceleration,
                  double largest_step, double longest_contact, State &state)
{
  constexpr double on_cap = 1e-11;  // relative
  const auto      &foam = column.foam();
  const std::size_t n   = foam.n_branches();
  ColumnHit         hit;
  hit.touch_compression = state.compression;
  hit.touch_speed       = state.speed;
  hit.stored_at_touch   = column.stored(state);
  state.relaxed = state.slipped = state.recovered = 0;

  std::vector<bool> slipping(n, false);
  double            time = 0, force = 0;
  const auto        record = [&] {
    hit.time.push_back(time);
    hit.force.push_back(force);
    hit.compression.push_back(state.compression);
    hit.speed.push_back(state.speed);
  };
  // A branch left on its cap by the rest slips from the first instant if loading pulls it outward.
  for (std::size_t j = 0; j < n; ++j)
    if (foam.slips(j) && column.norm(state, j) >= foam.cap(j) * (1 - 1e-9))
    {
      slipping[j] = true;
      slipping[j] = column.rates(0, state, slipping, acceleration).slip[j] > 0;
    }
  record();

  enum Event { none, starts, stops, loss };
  bool touching = false;
  for (bool over = false; !over;)
  {
    if (time > longest_contact)
      throw std::runtime_error("reference column: the weight does not leave");
    double      dt = largest_step;
    State       next;
    std::size_t branch = 0;
    const auto  event  = [&](double length) {
      next = column.runge_kutta(time, length, state, slipping, acceleration);
      if (touching && column.force(next) < 0)
        return loss;
      const auto slip = column.rates(time + length, next, slipping, acceleration).slip;
      for (branch = 0; branch < n; ++branch)
        if (slipping[branch] && slip[branch] < 0)
          return stops;
        else if (!slipping[branch] && foam.slips(branch) &&
                 column.norm(next, branch) > foam.cap(branch) * (1 + on_cap))
          return starts;
      return none;
    };
    Event kind = event(dt);
    if (kind != none)
    {
      double      before = 0, after = dt;
      std::size_t first = branch;
      for (int i = 0; i < 45; ++i)
      {
        const double middle = (before + after) / 2;
        const Event  e      = event(middle);
        if (e == none)
          before = middle;
        else
        {
          after = middle;
          kind  = e;
          first = branch;
        }
      }
      dt   = kind == loss ? after : before;
      next = column.runge_kutta(time, dt, state, slipping, acceleration);
      if (kind == loss)
        over = true;
      else
        slipping[first] = kind == starts;
    }
    time += dt;
    state    = next;
    force    = over ? 0 : column.force(state);
    touching = touching || force > 0;
    if (dt > 1e-3 * largest_step || over)
      record();
  }

  const auto top         = std::max_element(hit.force.begin(), hit.force.end());
  hit.peak_force         = *top;
  hit.time_of_peak_force = hit.time[top - hit.force.begin()];
  const auto deepest     = std::max_element(hit.compression.begin(), hit.compression.end());
  hit.peak_compression   = *deepest;
  hit.contact_time       = time;
  hit.loss_compression   = state.compression;
  hit.loss_speed         = -state.speed;
  hit.stored_at_loss     = column.stored(state);
  hit.relaxed            = state.relaxed * column.volume();
  hit.slipped            = state.slipped * column.volume();
  hit.recovered          = state.recovered * column.volume();
  return hit;
}

/// Ratio of unloading to loading area of force over compression, by the trapezoid rule.
double loop_return(const ColumnHit &hit)
{
  double loading = 0, unloading = 0;
  for (std::size_t i = 1; i < hit.force.size(); ++i)
  {
    const double work =
      (hit.force[i] + hit.force[i - 1]) / 2 * (hit.compression[i] - hit.compression[i - 1]);
    (work > 0 ? loading : unloading) += work;
  }
  return -unloading / loading;
}

void recover_freely(const ColumnEquations &column, double duration, State &state)
{
  // Steps grow with the time passed: the fastest branches first, the slow ones at ease.
  constexpr double first_step = 1e-6, growth = 1e-3;
  for (double time = 0; time < duration;)
  {
    const double dt = std::min(std::max(first_step, growth * time), duration - time);
    column.force_step(dt, 0, state);
    time = duration - time <= dt ? duration : time + dt;
  }
}

State rest_state(const ColumnFoam &foam)
{
  return State{0, 0, std::vector<Strain>(foam.n_branches(), Strain{}), 0, 0, 0};
}
} // namespace

std::vector<ColumnHit> column_drop(const ColumnFoam &foam, const Column &column, const ColumnDrop &drop)
{
  const ColumnEquations  equations(foam, column);
  std::vector<ColumnHit> hits;
  State                  state = rest_state(foam);
  const double           m = drop.mass, g = drop.gravity, v0 = drop.touch_speed;
  for (int i = 0; i < drop.n_hits; ++i)
  {
    if (i > 0)
      recover_freely(equations, drop.rest, state);
    state.speed = drop.from_current_surface ? v0 : std::sqrt(v0 * v0 + 2 * g * state.compression);
    const auto   fall = [=](double, double, double force) { return g - force / m; };
    ColumnHit    hit  = contact(equations, fall, drop.step, longest_contact, state);
    const double touch_energy = m * hit.touch_speed * hit.touch_speed / 2;
    const double loss_energy  = m * hit.loss_speed * hit.loss_speed / 2;
    hit.return_by_speed       = loss_energy / touch_energy;
    hit.return_by_height =
      g > 0 ? (loss_energy - m * g * (hit.loss_compression - hit.touch_compression)) / touch_energy
            : std::numeric_limits<double>::quiet_NaN();
    hit.return_by_loop = (loss_energy + m * g * (hit.peak_compression - hit.loss_compression)) /
                         (touch_energy + m * g * (hit.peak_compression - hit.touch_compression));
    hit.residual = touch_energy + hit.stored_at_touch + m * g * (hit.loss_compression - hit.touch_compression) -
                   loss_energy - hit.stored_at_loss - hit.relaxed - hit.slipped - hit.recovered;
    hits.push_back(std::move(hit));
  }
  return hits;
}

ColumnHit column_press(const ColumnFoam &foam, const Column &column, double peak_compression, double duration,
                       double step)
{
  const ColumnEquations equations(foam, column);
  const double          omega = std::acos(-1.) / duration;
  State                 state = rest_state(foam);
  state.speed                 = peak_compression * omega;
  const auto  wave   = [=](double, double x, double) { return -omega * omega * x; };
  ColumnHit   hit    = contact(equations, wave, step, 2 * duration, state);
  hit.return_by_loop = loop_return(hit);
  return hit;
}

ColumnHit column_force_pulse(const ColumnFoam &foam, const Column &column,
                             const std::function<double(double)> &force, double duration, int n_steps)
{
  const ColumnEquations equations(foam, column);
  State                 state = rest_state(foam);
  ColumnHit             hit;
  for (int i = 0; i <= n_steps; ++i)
  {
    const double time = duration * i / n_steps, load = std::max(0., force(time));
    if (i > 0)
      equations.force_step(duration / n_steps, load, state);
    hit.time.push_back(time);
    hit.force.push_back(load);
    hit.compression.push_back(state.compression);
    if (load > hit.peak_force)
    {
      hit.peak_force         = load;
      hit.time_of_peak_force = time;
    }
    hit.peak_compression = std::max(hit.peak_compression, state.compression);
  }
  hit.loss_compression = state.compression;
  hit.stored_at_loss   = equations.stored(state);
  hit.contact_time     = duration;
  hit.return_by_loop   = loop_return(hit);
  return hit;
}
} // namespace solemech::tests
