// SPDX-License-Identifier: Apache-2.0
#include "tests/support/column_foam.h"

#include <cmath>
#include <limits>

namespace solemech::tests
{
double ColumnFoam::shear_modulus() const
{
  double sum = 0;
  for (const auto &term : network)
    sum += term.mu;
  return sum;
}

double ColumnFoam::bulk_modulus() const
{
  double sum = 0;
  for (const auto &term : network)
    sum += 2 * term.mu * (1. / 3. + term.beta);
  return sum;
}

double ColumnFoam::share(std::size_t branch) const
{
  return slips(branch) ? slipping[branch - relaxing.size()].share : relaxing[branch].share;
}

double ColumnFoam::decay_time(std::size_t branch) const
{
  return slips(branch) ? recovery_time : relaxing[branch].time;
}

double ColumnFoam::cap(std::size_t branch) const
{
  return slips(branch) ? slipping[branch - relaxing.size()].cap : std::numeric_limits<double>::infinity();
}

namespace
{
/// Adds a term that depends on the volume ratio alone: W(J), with p = -dW/dJ and its slope.
void add_volumetric(FoamPoint &point, double J, double energy, double pressure, double slope)
{
  point.energy += energy;
  for (int a = 0; a < 3; ++a)
  {
    point.stress[a] -= pressure * J;
    for (int b = 0; b < 3; ++b)
      point.moduli[a][b] -= J * (pressure + J * slope);
  }
}
} // namespace

FoamPoint equilibrium(const ColumnFoam &foam, const Strain &strain)
{
  FoamPoint    point;
  const double log_J = strain[0] + strain[1] + strain[2];
  const double J = std::exp(log_J);

  for (const auto &[mu, alpha, beta] : foam.network)
  {
    const double J_power = std::exp(-alpha * beta * log_J);
    const double J_energy = beta == 0 ? -alpha * log_J : std::expm1(-alpha * beta * log_J) / beta;
    double       sum = J_energy;
    for (int a = 0; a < 3; ++a)
    {
      const double l_power = std::exp(alpha * strain[a]);
      sum += l_power - 1;
      point.stress[a] += 2 * mu / alpha * (l_power - J_power);
      point.moduli[a][a] += 2 * mu * l_power;
      for (int b = 0; b < 3; ++b)
        point.moduli[a][b] += 2 * mu * beta * J_power;
    }
    point.energy += 2 * mu / (alpha * alpha) * sum;
  }

  const double R = foam.relative_density;
  if (R <= 0)
    return point;

  const double n = foam.gas_exponent, p0 = foam.closed_cells * foam.atmospheric_pressure;
  const double gas_ratio = (1 - R) / (J - R), gas_power = std::pow(gas_ratio, n);
  const double gas_work =
    n == 1 ? (1 - R) * std::log(gas_ratio) : (1 - R) / (n - 1) * (std::pow(gas_ratio, n - 1) - 1);
  add_volumetric(point, J, p0 * (gas_work - (1 - J)), p0 * (gas_power - 1), -p0 * n * gas_power / (J - R));

  const double x = (J - R) / (1 - R), m = foam.densification_exponent, kappa = foam.densification_modulus;
  if (x < 1)
    add_volumetric(
      point, J, kappa * (1 - R) * ((std::pow(x, 1 - m) - 1) / (m - 1) + x - 1 - m * (1 - x) * (1 - x) / 2),
      kappa * (std::pow(x, -m) - 1 - m * (1 - x)), kappa * m * (1 - std::pow(x, -m - 1)) / (1 - R));
  return point;
}

std::array<std::array<double, 3>, 3> branch_metric(const ColumnFoam &foam)
{
  const double                         ratio = foam.bulk_modulus() / foam.shear_modulus();
  std::array<std::array<double, 3>, 3> metric;
  for (int a = 0; a < 3; ++a)
    for (int b = 0; b < 3; ++b)
      metric[a][b] = (a == b ? 2. : 0.) - 2. / 3. + ratio;
  return metric;
}

Strain times(const std::array<std::array<double, 3>, 3> &matrix, const Strain &strain)
{
  return {dot(matrix[0], strain), dot(matrix[1], strain), dot(matrix[2], strain)};
}

double squared_norm(const std::array<std::array<double, 3>, 3> &metric, const Strain &strain)
{
  return dot(strain, times(metric, strain));
}

double dot(const Strain &a, const Strain &b)
{
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
} // namespace solemech::tests
