// SPDX-License-Identifier: Apache-2.0
// Impacts, foam and gas columns of closed_forms.h.
#include "tests/support/closed_forms.h"

#include <Eigen/Eigenvalues>
#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>

namespace solemech::tests
{
using std::numbers::pi;

namespace
{
/// Root of an increasing function by halving.
template <typename Function>
double root(const Function &f, double low, double high)
{
  for (int i = 0; i < 200; ++i)
  {
    const double middle = (low + high) / 2;
    (f(middle) < 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}
} // namespace

Impact spring_impact(double m, double k, double v, double g)
{
  const double w = std::sqrt(k / m), static_sink = m * g / k, amplitude = std::hypot(static_sink, v / w);
  const double start = std::atan2(static_sink, v / w); // phase already passed at first touch
  return {k * (static_sink + amplitude), static_sink + amplitude, (pi / 2 + start) / w, (pi + 2 * start) / w,
          1};
}

Impact kelvin_voigt_impact(double m, double k, double c, double v)
{
  const double w = std::sqrt(k / m), zeta = c / (2 * std::sqrt(k * m)), s = std::sqrt(1 - zeta * zeta);
  const double phi = std::asin(zeta), force_scale = v * std::sqrt(k * m);
  Impact       impact;
  impact.peak_force = force_scale * (zeta < 0.5 ? std::exp(-zeta * (pi / 2 - 3 * phi) / s) : 2 * zeta);
  impact.time_of_peak = std::acos(zeta) / (s * w);
  impact.peak_compression = v / w * std::exp(-zeta * std::acos(zeta) / s);
  impact.contact_time = (pi - 2 * phi) / (s * w);
  impact.restitution = std::exp(-zeta * (pi - 2 * phi) / s);
  return impact;
}

Impact maxwell_impact(double m, double k, double c, double v)
{
  // The force obeys a damped oscillator of its own: F'' + (k/c) F' + (k/m) F = 0, F(0) = 0, F'(0) = k v.
  const double w = std::sqrt(k / m), zeta = std::sqrt(k * m) / (2 * c), s = std::sqrt(1 - zeta * zeta);
  Impact       impact;
  impact.peak_force = v * std::sqrt(k * m) * std::exp(-zeta * std::acos(zeta) / s);
  impact.contact_time = pi / (s * w);
  impact.restitution = std::exp(-zeta * pi / s);
  // Speed v exp(-zeta w t) [cos(s w t) + zeta/s sin(s w t)] is zero at s w t = pi - acos(zeta); there
  // x = F/k + (1/c) integral F dt = F/k + m v/c.
  impact.time_of_peak = (pi - std::acos(zeta)) / (s * w);
  impact.peak_compression = v / w * std::exp(-zeta * w * impact.time_of_peak) + m * v / c;
  return impact;
}

Impact standard_linear_solid_impact(double m, double k_inf, double k1, double tau, double v)
{
  Eigen::Matrix3d system; // compression, speed, force of the branch
  system << 0, 1, 0, -k_inf / m, 0, -1 / m, 0, k1, -1 / tau;
  const Eigen::EigenSolver<Eigen::Matrix3d> modes(system);
  const Eigen::Vector3cd                    weights =
    modes.eigenvectors().lu().solve(Eigen::Vector3d(0, v, 0).cast<std::complex<double>>());
  const auto state = [&](double t) -> Eigen::Vector3d {
    const Eigen::Vector3cd growth = (modes.eigenvalues() * t).array().exp();
    return (modes.eigenvectors() * growth.cwiseProduct(weights)).real();
  };
  const auto force = [&](double t) { return k_inf * state(t)[0] + state(t)[2]; };
  const auto force_rate = [&](double t) {
    const Eigen::Vector3d y = state(t);
    return (k_inf + k1) * y[1] - y[2] / tau;
  };
  Impact       impact;
  const double step = 0.05 * std::sqrt(m / (k_inf + k1));
  double       t = step;
  while (force(t) > 0)
    t += step;
  impact.contact_time = root([&](double x) { return -force(x); }, t - step, t);
  impact.time_of_peak = root([&](double x) { return -state(x)[1]; }, 0, impact.contact_time);
  impact.peak_compression = state(impact.time_of_peak)[0];
  impact.peak_force = force(root([&](double x) { return -force_rate(x); }, 0, impact.time_of_peak));
  impact.restitution = -state(impact.contact_time)[1] / v;
  return impact;
}

double standard_linear_solid_loss_tangent(double k_inf, double k1, double tau, double w)
{
  const double x = w * tau;
  return k1 * x / (1 + x * x) / (k_inf + k1 * x * x / (1 + x * x));
}

ForceReductionReference force_reduction_reference(double g)
{
  const double m = 20, k = 2e6, v = std::sqrt(2 * g * 0.055), corner = 2 * pi * 120;
  using State = std::array<double, 4>; // compression, speed, filtered force and its rate
  const auto rate = [&](const State &y) -> State {
    const double force = std::max(0., k * y[0]);
    return {y[1], g - force / m, y[3], corner * corner * (force - y[2]) - std::sqrt(2.) * corner * y[3]};
  };
  const auto moved = [](State y, const State &d, double f) {
    for (int i = 0; i < 4; ++i)
      y[i] += f * d[i];
    return y;
  };
  ForceReductionReference peak{0, 0};
  State                   y{0, v, 0, 0};
  const double            dt = 1e-6;
  for (int i = 0; i < 40000; ++i)
  {
    const State a = rate(y), b = rate(moved(y, a, dt / 2)), c = rate(moved(y, b, dt / 2)),
                d = rate(moved(y, c, dt));
    y = moved(moved(moved(moved(y, a, dt / 6), b, dt / 3), c, dt / 3), d, dt / 6);
    peak.raw = std::max(peak.raw, k * y[0]);
    peak.filtered = std::max(peak.filtered, y[2]);
  }
  return peak;
}

double foam_stress_free(double mu, double alpha, double nu, double eps)
{
  const double l = 1 - eps;
  return -2 * mu / (alpha * l) * (std::pow(l, alpha) - std::pow(l, -alpha * nu));
}

double foam_stress_confined(double mu, double alpha, double nu, double eps)
{
  const double l = 1 - eps, beta = nu / (1 - 2 * nu);
  return -2 * mu / (alpha * l) * (std::pow(l, alpha) - std::pow(l, -alpha * beta));
}

double foam_energy_free(double mu, double alpha, double nu, double eps)
{
  const double l = 1 - eps, beta = nu / (1 - 2 * nu), J = std::pow(l, 1 - 2 * nu);
  const double volumetric = beta == 0 ? -alpha * std::log(J) : (std::pow(J, -alpha * beta) - 1) / beta;
  return 2 * mu / (alpha * alpha) * (std::pow(l, alpha) + 2 * std::pow(l, -nu * alpha) - 3 + volumetric);
}

double foam_shear_stress(double mu, double alpha, double gamma)
{
  const double l1 = std::sqrt(1 + gamma * gamma / 2 + gamma * std::sqrt(1 + gamma * gamma / 4)), l2 = 1 / l1;
  return gamma * 2 * mu / alpha * (std::pow(l1, alpha) - std::pow(l2, alpha)) / (l1 * l1 - l2 * l2);
}

double foam_hydrostatic_pressure(double mu, double alpha, double nu, double J)
{
  const double beta = nu / (1 - 2 * nu);
  return -2 * mu / (alpha * J) * (std::pow(J, alpha / 3) - std::pow(J, -alpha * beta));
}

ColumnPeak foam_column_drop(double mu, double alpha, double nu, double area, double height, double m,
                            double drop_height, double g, bool gravity_in_contact)
{
  const double eps = root(
    [&](double e) {
      return area * height * foam_energy_free(mu, alpha, nu, e) -
             m * g * (drop_height + (gravity_in_contact ? height * e : 0));
    },
    1e-9, 0.99);
  return {eps, eps * height, area * foam_stress_free(mu, alpha, nu, eps)};
}

double cell_gas_stress(double p0, double relative_density, double eps, double n)
{
  return p0 * (std::pow((1 - relative_density) / (1 - eps - relative_density), n) - 1);
}

double gas_column_force(double area, double height, double gauge, double atmosphere, double n, double x)
{
  return area * ((gauge + atmosphere) * std::pow(height / (height - x), n) - atmosphere);
}

double gas_column_work(double area, double height, double gauge, double atmosphere, double n, double x)
{
  const double ratio = height / (height - x), p1 = gauge + atmosphere;
  const double work = n == 1 ? std::log(ratio) : (std::pow(ratio, n - 1) - 1) / (n - 1);
  return p1 * area * height * work - atmosphere * area * x;
}

double gas_column_drop(double area, double height, double gauge, double atmosphere, double n, double m,
                       double drop_height, double g)
{
  return root(
    [&](double x) {
      return gas_column_work(area, height, gauge, atmosphere, n, x) - m * g * (drop_height + x);
    },
    1e-9, height * (1 - 1e-9));
}

double gas_column_return_after_cooling(double area, double height, double gauge, double atmosphere,
                                       double gamma, double x)
{
  // The cooled gas expands adiabatically from wall temperature at the compressed height.
  const double ratio = height / (height - x), p1 = gauge + atmosphere;
  const double in = gas_column_work(area, height, gauge, atmosphere, gamma, x);
  const double out =
    p1 * area * height * (1 - std::pow(ratio, 1 - gamma)) / (gamma - 1) - atmosphere * area * x;
  return out / in;
}
} // namespace solemech::tests
