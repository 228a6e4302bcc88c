// SPDX-License-Identifier: Apache-2.0
#include "tests/support/column_equations.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
constexpr double longest_contact = 2; ///< of a drop [s]

/// Integrates one contact until the force is zero; `state` is left at contact loss.
ColumnHit contact(const ColumnEquations &column, const ColumnEquations::Acceleration &acceleration,
                  double largest_step, double longest_contact, ColumnState &state)
{
  constexpr double  on_cap = 1e-11; // relative
  const auto       &foam = column.foam();
  const std::size_t n = foam.n_branches();
  ColumnHit         hit;
  hit.touch_compression = state.compression;
  hit.touch_speed = state.speed;
  hit.stored_at_touch = column.stored(state);
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
    ColumnState next;
    std::size_t branch = 0;
    const auto  event = [&](double length) {
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
        const Event  e = event(middle);
        if (e == none)
          before = middle;
        else
        {
          after = middle;
          kind = e;
          first = branch;
        }
      }
      dt = kind == loss ? after : before;
      next = column.runge_kutta(time, dt, state, slipping, acceleration);
      if (kind == loss)
        over = true;
      else
        slipping[first] = kind == starts;
    }
    time += dt;
    state = next;
    force = over ? 0 : column.force(state);
    touching = touching || force > 0;
    if (dt > 1e-3 * largest_step || over)
      record();
  }

  const auto top = std::max_element(hit.force.begin(), hit.force.end());
  hit.peak_force = *top;
  hit.time_of_peak_force = hit.time[top - hit.force.begin()];
  const auto deepest = std::max_element(hit.compression.begin(), hit.compression.end());
  hit.peak_compression = *deepest;
  hit.contact_time = time;
  hit.loss_compression = state.compression;
  hit.loss_speed = -state.speed;
  hit.stored_at_loss = column.stored(state);
  hit.relaxed = state.relaxed * column.volume();
  hit.slipped = state.slipped * column.volume();
  hit.recovered = state.recovered * column.volume();
  return hit;
}

/// Ratio of unloading to loading area of force over compression, by the trapezoid rule.
double loop_return(const ColumnHit &hit)
{
  double loading = 0, unloading = 0;
  for (std::size_t i = 1; i < hit.force.size(); ++i)
  {
    const double work = (hit.force[i] + hit.force[i - 1]) / 2 * (hit.compression[i] - hit.compression[i - 1]);
    (work > 0 ? loading : unloading) += work;
  }
  return -unloading / loading;
}

} // namespace

void fill_returns(ColumnHit &hit, double mass, double gravity)
{
  const double weight = mass * gravity;
  const double energy = mass * hit.touch_speed * hit.touch_speed / 2;
  const double rebound = mass * hit.loss_speed * hit.loss_speed / 2;
  hit.return_by_speed = rebound / energy;
  hit.return_by_height = weight > 0
                           ? (rebound - weight * (hit.loss_compression - hit.touch_compression)) / energy
                           : std::numeric_limits<double>::quiet_NaN();
  hit.return_by_loop = (rebound + weight * (hit.peak_compression - hit.loss_compression)) /
                       (energy + weight * (hit.peak_compression - hit.touch_compression));
}

std::vector<ColumnHit> column_drop(const ColumnFoam &foam, const Column &column, const ColumnDrop &drop)
{
  const ColumnEquations  equations(foam, column);
  std::vector<ColumnHit> hits;
  ColumnState            state = equations.rest();
  const double           m = drop.mass, g = drop.gravity, v0 = drop.touch_speed;
  for (int i = 0; i < drop.n_hits; ++i)
  {
    if (i > 0)
      equations.recover_freely(drop.rest, state);
    state.speed = drop.from_current_surface ? v0 : std::sqrt(v0 * v0 + 2 * g * state.compression);
    const auto fall = [=](double, double, double force) { return g - force / m; };
    ColumnHit  hit = contact(equations, fall, drop.step, longest_contact, state);
    fill_returns(hit, m, g);
    hit.residual = m * (hit.touch_speed * hit.touch_speed - hit.loss_speed * hit.loss_speed) / 2 +
                   hit.stored_at_touch - hit.stored_at_loss - hit.relaxed - hit.slipped - hit.recovered +
                   m * g * (hit.loss_compression - hit.touch_compression);
    hits.push_back(std::move(hit));
  }
  return hits;
}

ColumnHit column_press(const ColumnFoam &foam, const Column &column, double peak_compression, double duration,
                       double step)
{
  const ColumnEquations equations(foam, column);
  const double          omega = std::acos(-1.) / duration;
  ColumnState           state = equations.rest();
  state.speed = peak_compression * omega;
  const auto wave = [=](double, double x, double) { return -omega * omega * x; };
  ColumnHit  hit = contact(equations, wave, step, 2 * duration, state);
  hit.return_by_loop = loop_return(hit);
  return hit;
}

ColumnHit column_force_pulse(const ColumnFoam &foam, const Column &column,
                             const std::function<double(double)> &force, double duration, int n_steps)
{
  const ColumnEquations equations(foam, column);
  ColumnState           state = equations.rest();
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
      hit.peak_force = load;
      hit.time_of_peak_force = time;
    }
    hit.peak_compression = std::max(hit.peak_compression, state.compression);
  }
  hit.loss_compression = state.compression;
  hit.stored_at_loss = equations.stored(state);
  hit.contact_time = duration;
  hit.return_by_loop = loop_return(hit);
  return hit;
}
} // namespace solemech::tests
