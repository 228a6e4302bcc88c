// SPDX-License-Identifier: Apache-2.0
#include "tests/support/stack_reference.h"

#include "tests/support/column_equations.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
constexpr double longest_contact = 2; ///< [s]

class Stack
{
public:
  Stack(const std::vector<StackLayer> &layers, double area, Lateral lateral)
  {
    for (const auto &layer : layers)
    {
      equations_.emplace_back(layer.foam, Column{area, layer.height, lateral});
      states_.push_back(equations_.back().rest());
    }
    work_.assign(layers.size(), 0.);
  }

  double compression() const
  {
    double sum = 0;
    for (const auto &state : states_)
      sum += state.compression;
    return sum;
  }

  /// The stack after a step under `force` at its end; `force_before` serves the work of each layer.
  Stack stepped(double dt, double force_before, double force) const
  {
    Stack next = *this;
    for (std::size_t i = 0; i < states_.size(); ++i)
    {
      equations_[i].force_step(dt, force, next.states_[i]);
      next.work_[i] += (force_before + force) / 2 * (next.states_[i].compression - states_[i].compression);
    }
    return next;
  }

  void rest(double duration)
  {
    for (std::size_t i = 0; i < states_.size(); ++i)
      equations_[i].recover_freely(duration, states_[i]);
    std::fill(work_.begin(), work_.end(), 0.);
  }

  std::size_t size() const { return states_.size(); }
  double      compression(std::size_t layer) const { return states_[layer].compression; }
  double      stored(std::size_t layer) const { return equations_[layer].stored(states_[layer]); }
  double      work(std::size_t layer) const { return work_[layer]; }

private:
  std::vector<ColumnEquations> equations_;
  std::vector<ColumnState>     states_;
  std::vector<double>          work_;
};

struct Motion
{
  Stack  stack;
  double speed, force; ///< [m/s], [N]
};

/// Trapezoid step of the mass: the force at its end makes the stack as short as the mass is low (secant
/// rule).
Motion advanced(const Motion &old, double dt, const ColumnDrop &drop)
{
  const double m = drop.mass, a = drop.gravity - old.force / m, x = old.stack.compression();
  Stack        next = old.stack;
  const auto   gap = [&](double force) {
    next = old.stack.stepped(dt, old.force, force);
    return x + old.speed * dt + dt * dt / 4 * (a + drop.gravity - force / m) - next.compression();
  };
  double force = old.force, g = gap(force), other = old.force + 1, g_other = gap(other);
  for (int i = 0; i < 50 && std::abs(other - force) > 1e-9 * (1 + std::abs(force)) && g != g_other; ++i)
  {
    const double better = other - g_other * (other - force) / (g_other - g);
    force = other, g = g_other;
    other = better, g_other = gap(other);
  }
  return {next, old.speed + dt / 2 * (a + drop.gravity - other / m), other};
}

StackHit contact(Motion &motion, const ColumnDrop &drop)
{
  StackHit            hit;
  double              time = 0;
  const std::size_t   n = motion.stack.size();
  std::vector<double> stored_at_touch(n);
  for (std::size_t i = 0; i < n; ++i)
    stored_at_touch[i] = motion.stack.stored(i);
  hit.touch_compression = motion.stack.compression();
  hit.touch_speed = motion.speed;
  hit.layer_peak_compression.assign(n, 0.);
  const auto record = [&] {
    hit.time.push_back(time);
    hit.force.push_back(motion.force);
    hit.compression.push_back(motion.stack.compression());
    hit.speed.push_back(motion.speed);
    for (std::size_t i = 0; i < n; ++i)
      hit.layer_peak_compression[i] = std::max(hit.layer_peak_compression[i], motion.stack.compression(i));
  };
  record();
  for (bool over = false; !over;)
  {
    if (time > longest_contact)
      throw std::runtime_error("reference stack: the weight does not leave");
    double dt = drop.step;
    Motion next = advanced(motion, dt, drop);
    if (next.force < 0)
    {
      double before = 0;
      for (int i = 0; i < 40; ++i)
      {
        const double middle = (before + dt) / 2;
        (advanced(motion, middle, drop).force < 0 ? dt : before) = middle;
      }
      next = advanced(motion, dt, drop);
      over = true;
    }
    time += dt;
    motion = next;
    record();
  }
  const auto top = std::max_element(hit.force.begin(), hit.force.end());
  hit.peak_force = *top;
  hit.time_of_peak_force = hit.time[top - hit.force.begin()];
  hit.peak_compression = *std::max_element(hit.compression.begin(), hit.compression.end());
  hit.contact_time = time;
  hit.loss_compression = motion.stack.compression();
  hit.loss_speed = -motion.speed;
  for (std::size_t i = 0; i < n; ++i)
  {
    hit.layer_stored_at_loss.push_back(motion.stack.stored(i));
    hit.layer_dissipated.push_back(motion.stack.work(i) + stored_at_touch[i] - motion.stack.stored(i));
    hit.stored_at_touch += stored_at_touch[i];
    hit.stored_at_loss += motion.stack.stored(i);
  }
  fill_returns(hit, drop.mass, drop.gravity);
  hit.residual = drop.mass * (hit.touch_speed * hit.touch_speed - hit.loss_speed * hit.loss_speed) / 2 +
                 hit.stored_at_touch - hit.stored_at_loss +
                 drop.mass * drop.gravity * (hit.loss_compression - hit.touch_compression);
  for (const double lost : hit.layer_dissipated)
    hit.residual -= lost;
  return hit;
}
} // namespace

std::vector<StackHit> stack_drop(const std::vector<StackLayer> &layers, double area, Lateral lateral,
                                 const ColumnDrop &drop)
{
  Motion                motion{Stack(layers, area, lateral), drop.touch_speed, 0};
  std::vector<StackHit> hits;
  for (int i = 0; i < drop.n_hits; ++i)
  {
    if (i > 0)
      motion.stack.rest(drop.rest);
    const double fall = drop.from_current_surface ? 0 : motion.stack.compression();
    motion.speed = std::sqrt(drop.touch_speed * drop.touch_speed + 2 * drop.gravity * fall);
    motion.force = 0;
    hits.push_back(contact(motion, drop));
  }
  return hits;
}
} // namespace solemech::tests
