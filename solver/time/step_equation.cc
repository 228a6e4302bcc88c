// SPDX-License-Identifier: Apache-2.0
#include "solver/time/step_equation.h"

#include <algorithm>
#include <stdexcept>

namespace solemech::solver
{
AlphaCoefficients alpha_coefficients(double rho)
{
  if (!(rho >= 0 && rho <= 1))
    throw std::invalid_argument("spectral radius must be 0 to 1");
  const double alpha_m = (2 * rho - 1) / (rho + 1), alpha_f = rho / (rho + 1);
  const double gamma = 0.5 - alpha_m + alpha_f, half = 1 - alpha_m + alpha_f;
  return {alpha_m, alpha_f, 0.25 * half * half, gamma};
}

namespace
{
void scale(double factor, Tangent &tangent)
{
  for (auto &value : tangent.values)
    value *= factor;
  tangent.coupling *= factor, tangent.bodies *= factor;
  for (auto &term : tangent.rank_one)
    term.c *= factor;
  for (auto &entry : tangent.unsymmetric)
    entry = {entry.row(), entry.col(), factor * entry.value()};
}
} // namespace

StepEquation::StepEquation(const EquationOfMotion &equation, const AlphaCoefficients &coefficients,
                           bool quasi_static, double dt, const StepStart &start, std::vector<LedUnknown> led)
  : equation_(equation), c_(quasi_static ? AlphaCoefficients{0, 0, 0.25, 0.5} : coefficients),
    quasi_static_(quasi_static), dt_(dt), start_(start), led_(std::move(led)),
    leading_(Vector::Zero(static_cast<int>(led_.size())))
{
}

Vector StepEquation::acceleration(const Vector &x_new) const
{
  if (quasi_static_)
    return Vector::Zero(x_new.size());
  // Newmark: a_new = (x_new - x)/(beta dt^2) - v/(beta dt) - (1/(2 beta) - 1) a.
  return (x_new - start_.x) / (c_.beta * dt_ * dt_) - start_.v / (c_.beta * dt_) -
         (0.5 / c_.beta - 1) * start_.a;
}

Vector StepEquation::speed(const Vector &x_new) const
{
  if (quasi_static_)
    return Vector::Zero(x_new.size());
  return start_.v + dt_ * ((1 - c_.gamma) * start_.a + c_.gamma * acceleration(x_new));
}

Vector StepEquation::mixed_acceleration(const Vector &x_new) const
{
  return (1 - c_.alpha_m) * acceleration(x_new) + c_.alpha_m * start_.a;
}

bool StepEquation::residual(const Vector &x_new, Vector &residual, Tangent *tangent, std::string &failed)
{
  if (!equation_.forces(x_new, force_, tangent, failed))
    return false;
  residual = (1 - c_.alpha_f) * force_ + c_.alpha_f * start_.force;
  if (!quasi_static_)
    residual += equation_.inertia(mixed_acceleration(x_new));
  for (std::size_t i = 0; i < led_.size(); ++i)
    leading_[i] = residual[led_[i].unknown], residual[led_[i].unknown] = 0;
  if (!tangent)
    return true;
  scale(1 - c_.alpha_f, *tangent);
  if (!quasi_static_)
    equation_.add_mass((1 - c_.alpha_m) / (c_.beta * dt_ * dt_), *tangent);
  constrain(led_, equation_.numbering->pattern(), *tangent);
  return true;
}

StepEquation::Work StepEquation::work(const Vector &x_new, const std::vector<LedUnknown> &was_led) const
{
  const Vector dx = x_new - start_.x;
  const Vector mixed = (1 - old_share()) * force_ + old_share() * start_.force;
  Work         work{mixed.dot(dx), 0, 0};
  if (!quasi_static_)
    work.inertia = equation_.inertia(mixed_acceleration(x_new)).dot(dx);
  for (std::size_t i = 0; i < led_.size(); ++i)
  {
    const int k = led_[i].unknown;
    work.driven += (quasi_static_ ? mixed[k] : leading_[i]) * dx[k];
  }
  if (quasi_static_)
    for (const auto &one : was_led) // what led it lets go along this way
      if (!std::ranges::binary_search(led_, one.unknown, {}, &LedUnknown::unknown))
        work.driven += old_share() * start_.force[one.unknown] * dx[one.unknown];
  return work;
}
} // namespace solemech::solver
