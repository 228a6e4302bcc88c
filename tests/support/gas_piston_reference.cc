// SPDX-License-Identifier: Apache-2.0
#include "tests/support/gas_piston_reference.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace solemech::tests
{
namespace
{
/// Compression [m], speed [m/s], ln(T/T_w) [-], heat loss [J], mass over that at rest [-], leak loss [J].
using State = std::array<double, 6>;

class PistonEquations
{
public:
  PistonEquations(const GasColumn &gas, const PistonDrop &drop)
    : gas_(gas), drop_(drop), rest_volume_(gas.area * gas.height + gas.outside_volume),
      rest_pressure_(gas.gauge_pressure + gas.atmospheric_pressure),
      heat_capacity_(rest_pressure_ * rest_volume_ / (gas.wall_temperature * (gas.gamma - 1)))
  {
  }

  double volume(const State &s) const { return rest_volume_ - gas_.area * s[0]; }
  double temperature(const State &s) const
  {
    return gas_.heat_time == 0 ? gas_.wall_temperature : gas_.wall_temperature * std::exp(s[2]);
  }
  double gauge_pressure(const State &s) const
  {
    return rest_pressure_ * s[4] * rest_volume_ / volume(s) * temperature(s) / gas_.wall_temperature -
           gas_.atmospheric_pressure;
  }
  /// Rate of the mass over that at rest [1/s]: negative while gas leaves.
  double leak_rate(const State &s) const
  {
    const double g = gas_.gamma, p = gauge_pressure(s) + gas_.atmospheric_pressure,
                 pa = gas_.atmospheric_pressure;
    const bool   leaves = p > pa;
    const double up = leaves ? p : pa, T = leaves ? temperature(s) : gas_.wall_temperature;
    const double q = std::max(std::min(p, pa) / up, std::pow(2 / (g + 1), g / (g - 1)));
    // Mach number in the throat from the ratio of pressures, and the flow from it.
    const double mach2 = 2 / (g - 1) * (std::pow(q, -(g - 1) / g) - 1);
    const double flux = up * std::sqrt(g / (gas_.gas_constant * T)) * std::sqrt(std::max(mach2, 0.0)) *
                        std::pow(1 + 0.5 * (g - 1) * mach2, -0.5 * (g + 1) / (g - 1));
    const double hole = 0.25 * std::numbers::pi * gas_.leak_diameter * gas_.leak_diameter;
    const double mass = rest_pressure_ * rest_volume_ / (gas_.gas_constant * gas_.wall_temperature);
    return (leaves ? -1 : 1) * gas_.discharge_coefficient * hole * flux / mass;
  }
  /// Of exergy [W], of a leak with mass rate `leaking` and the relative rates of temperature and volume.
  double leak_loss_rate(const State &s, double leaking, double heating, double widening) const
  {
    const double g = gas_.gamma, p = gauge_pressure(s) + gas_.atmospheric_pressure, T = temperature(s);
    const double Tw = gas_.wall_temperature,
                 R = rest_pressure_ * rest_volume_ / Tw; // of the gas at rest [J/K]
    const double entropy = g / (g - 1) * std::log(T / Tw) - std::log(p / gas_.atmospheric_pressure);
    if (leaking < 0)
      return -leaking * R * (g / (g - 1) * (T - Tw) - Tw * entropy);
    const double growing = g / (g - 1) * heating - (leaking / s[4] + heating - widening);
    return Tw * R * (leaking * entropy + s[4] * growing);
  }
  double thread_tension(const State &s) const
  {
    return std::isinf(gas_.thread_stiffness)
             ? 0
             : std::max(0., gas_.gauge_pressure * gas_.area - gas_.thread_stiffness * s[0]);
  }
  double force(const State &s) const { return gauge_pressure(s) * gas_.area - thread_tension(s); }

  State rate(const State &s) const
  {
    const double T = temperature(s), Tw = gas_.wall_temperature;
    const bool   exchanges = gas_.heat_time > 0 && std::isfinite(gas_.heat_time);
    const double heating = (gas_.gamma - 1) * gas_.area * s[1] / volume(s);
    const double leaking = gas_.leak_diameter > 0 ? leak_rate(s) : 0;
    const double cooling = (leaking < 0 ? gas_.gamma - 1 : gas_.gamma * Tw / T - 1) * leaking / s[4];
    return {s[1],
            drop_.gravity - force(s) / drop_.mass,
            gas_.heat_time == 0 ? 0 : heating + cooling - (exchanges ? (T - Tw) / (gas_.heat_time * T) : 0),
            exchanges ? s[4] * heat_capacity_ * (T - Tw) * (T - Tw) / (T * gas_.heat_time) : 0,
            leaking,
            leaking == 0 ? 0 : leak_loss_rate(s, leaking, cooling, 0)};
  }

  State step(const State &s, double dt) const
  {
    const auto move = [&](const State &k, double factor) {
      State moved = s;
      for (std::size_t i = 0; i < s.size(); ++i)
        moved[i] += factor * k[i];
      return moved;
    };
    const State k1 = rate(s), k2 = rate(move(k1, dt / 2)), k3 = rate(move(k2, dt / 2)),
                k4 = rate(move(k3, dt));
    State next = s;
    for (std::size_t i = 0; i < s.size(); ++i)
      next[i] += dt / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
    return next;
  }

  /// Work that the gas and the threads could still give back against walls and atmosphere [J].
  double stored(const State &s) const
  {
    const double T = temperature(s), Tw = gas_.wall_temperature, V = volume(s);
    const double threads = std::isinf(gas_.thread_stiffness)
                             ? 0
                             : thread_tension(s) * thread_tension(s) / (2 * gas_.thread_stiffness);
    const double amount = s[4] * rest_pressure_ * rest_volume_; // m R T_w
    return s[4] * heat_capacity_ * ((T - Tw) - Tw * std::log(T / Tw)) -
           amount * std::log(gas_.atmospheric_pressure * V / amount) + gas_.atmospheric_pressure * V -
           amount + threads;
  }

private:
  GasColumn  gas_;
  PistonDrop drop_;
  double     rest_volume_, rest_pressure_, heat_capacity_;
};
} // namespace

PistonHit piston_drop(const GasColumn &gas, const PistonDrop &drop)
{
  const PistonEquations equations(gas, drop);
  State                 state{0, drop.touch_speed, 0, 0, 1, 0};
  PistonHit             hit;
  double                time = 0;
  const double          stored_at_rest = equations.stored(state);
  const auto            record = [&] {
    hit.time.push_back(time);
    hit.compression.push_back(state[0]);
    hit.force.push_back(equations.force(state));
    hit.gauge_pressure.push_back(equations.gauge_pressure(state));
    hit.temperature.push_back(equations.temperature(state));
  };
  record();
  for (bool over = false; !over;)
  {
    if (time > 2)
      throw std::runtime_error("reference piston: the weight does not leave");
    const auto lost = [&](const State &s) { return s[1] < 0 && (s[0] <= 0 || equations.force(s) <= 0); };
    double     dt = drop.step;
    State      next = equations.step(state, dt);
    if (lost(next))
    {
      double before = 0;
      for (int i = 0; i < 60; ++i)
      {
        const double middle = (before + dt) / 2;
        (lost(equations.step(state, middle)) ? dt : before) = middle;
      }
      next = equations.step(state, dt);
      over = true;
    }
    time += dt;
    state = next;
    record();
  }
  const auto largest = [](const std::vector<double> &v) { return *std::max_element(v.begin(), v.end()); };
  hit.peak_force = largest(hit.force);
  hit.peak_compression = largest(hit.compression);
  hit.peak_gauge_pressure = largest(hit.gauge_pressure);
  hit.peak_temperature = largest(hit.temperature);
  hit.contact_time = time;
  hit.loss_speed = -state[1];
  hit.loss_compression = state[0];
  hit.loss_temperature = equations.temperature(state);
  hit.heat_loss = state[3];
  hit.leak_loss = state[5];
  hit.left_in_gas = equations.stored(state) - stored_at_rest;

  const double weight = drop.mass * drop.gravity;
  const double in = drop.mass * drop.touch_speed * drop.touch_speed / 2,
               out = drop.mass * state[1] * state[1] / 2;
  hit.return_by_speed = out / in;
  hit.return_by_height = (out - weight * state[0]) / in;
  hit.return_by_loop =
    (out + weight * (hit.peak_compression - state[0])) / (in + weight * hit.peak_compression);
  hit.residual = in + weight * state[0] - out - hit.left_in_gas - hit.heat_loss - hit.leak_loss;
  return hit;
}
} // namespace solemech::tests
