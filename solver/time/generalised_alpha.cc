// SPDX-License-Identifier: Apache-2.0
#include "solver/time/generalised_alpha.h"

#include "solver/time/no_balance.h"

#include <cmath>
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

TimeIntegrator::TimeIntegrator(EquationOfMotion &equation, double spectral_radius,
                               std::unique_ptr<LinearSolver> solver)
  : equation_(equation), coefficients_(alpha_coefficients(spectral_radius)), solver_(std::move(solver)),
    part_accounts_(equation)
{
  if (!solver_)
    solver_ = std::make_unique<BorderedSolver>(equation.mesh->pattern());
  x = v = a = Vector::Zero(equation.size());
  prescribed.resize(equation.n_freedoms());
  was_prescribed_.resize(equation.n_freedoms(), false);
}

namespace
{
constexpr unsigned n_plain_tries = 2;     // of a step, by Newton's method alone
constexpr unsigned most_passes = 8;       // of a step, each with what the one before has settled
constexpr double   settled_change = 0.01; // that a pass may still make

double sum(const std::vector<EnergyEntry> &entries)
{
  double total = 0;
  for (const auto &entry : entries)
    total += entry.value;
  return total;
}
} // namespace

void TimeIntegrator::start()
{
  std::string failed;
  last_dt_ = 0;
  equation_.begin_step(x, 0);
  if (!equation_.forces(x, force_, nullptr, failed))
    throw NoBalance("the run starts from a shape that " + failed +
                    " cannot have. Try a finer accuracy, or thicker layers");
  if (open_parts)
    part_accounts_.start(x);
  equation_.accept(x, 0);
  if (open_parts)
    part_accounts_.close(*open_parts);
  energies_ = equation_.energies();
  energy_sum_ = sum(energies_);
}

double TimeIntegrator::kinetic_energy() const
{
  return 0.5 * v.dot(equation_.inertia(v));
}

double TimeIntegrator::body_kinetic_energy(std::size_t body) const
{
  const auto  &moving = equation_.bodies[body];
  const Vector speeds = v.segment(moving.first, moving.n_freedoms());
  double       energy = 0;
  for (int k = 0; k < moving.n_freedoms(); ++k)
    energy += 0.5 * moving.inertia[k] * speeds[k] * speeds[k];
  return energy;
}

double TimeIntegrator::longest_way_to(const Vector &x_new) const
{
  double longest = 0;
  for (const auto &body : equation_.bodies)
    for (std::size_t k = 0; k < body.freedoms.size(); ++k)
      if (!is_turn(body.freedoms[k]))
        longest = std::max(longest, std::abs(x_new[body.unknown(k)] - x[body.unknown(k)]));
  return longest;
}

Vector TimeIntegrator::linear_guess() const
{
  Vector      force;
  Tangent     tangent;
  std::string failed;
  if (!equation_.forces(x, force, &tangent, failed))
    return x;
  const int n = equation_.n_unknowns();
  Vector    right = -force;
  for (unsigned k = 0; k < prescribed.size(); ++k)
    if (prescribed[k])
    {
      const double way = *prescribed[k] - x[n + k];
      right.head(n) -= way * tangent.coupling.col(k);
      right[n + k] = way;
      tangent.coupling.col(k).setZero();
      tangent.bodies.row(k).setZero(), tangent.bodies.col(k).setZero();
      tangent.bodies(k, k) = 1;
    }
  if (!solver_->factorise(tangent))
    return x;
  const Vector guess = x + solver_->solve(right);
  return guess.allFinite() && equation_.forces(guess, force, nullptr, failed) ? guess : x;
}

StepOutcome TimeIntegrator::failed_step(const std::string &reason, StepOutcome outcome)
{
  outcome.reason = reason;
  ++n_repeated;
  ++n_failures;
  last_dt_ = 0; // the next try starts from the accepted state
  return outcome;
}

StepOutcome TimeIntegrator::step(double dt)
{
  const auto   c = quasi_static ? AlphaCoefficients{0, 0, 0.25, 0.5} : coefficients_;
  const int    n = equation_.n_unknowns();
  const double mass_factor = quasi_static ? 0.0 : (1 - c.alpha_m) / (c.beta * dt * dt);
  // Newmark: a_new = (x_new - x)/(beta dt^2) - v/(beta dt) - (1/(2 beta) - 1) a.
  const auto new_acceleration = [&](const Vector &x_new) -> Vector {
    return (x_new - x) / (c.beta * dt * dt) - v / (c.beta * dt) - (0.5 / c.beta - 1) * a;
  };
  equation_.begin_step(x, dt);

  Vector     new_force, unbalanced = Vector::Zero(equation_.n_freedoms());
  const auto evaluate = [&](const Vector &x_new, Vector &residual, Tangent *tangent, std::string &failed) {
    if (!equation_.forces(x_new, new_force, tangent, failed))
      return false;
    residual = (1 - c.alpha_f) * new_force + c.alpha_f * force_;
    if (!quasi_static)
      residual += equation_.inertia((1 - c.alpha_m) * new_acceleration(x_new) + c.alpha_m * a);
    for (unsigned k = 0; k < prescribed.size(); ++k)
      if (prescribed[k])
        unbalanced[k] = residual[n + k], residual[n + k] = 0;
    if (!tangent)
      return true;
    const double scale = 1 - c.alpha_f;
    for (auto &value : tangent->values)
      value *= scale;
    tangent->coupling *= scale, tangent->bodies *= scale;
    for (auto &term : tangent->rank_one)
      term.c *= scale;
    for (auto &entry : tangent->unsymmetric)
      entry = {entry.row(), entry.col(), scale * entry.value()};
    if (!quasi_static)
      equation_.add_mass(mass_factor, *tangent);
    for (unsigned k = 0; k < prescribed.size(); ++k)
      if (prescribed[k])
      {
        tangent->coupling.col(k).setZero();
        tangent->bodies.row(k).setZero(), tangent->bodies.col(k).setZero();
        tangent->bodies(k, k) = 1;
        std::erase_if(tangent->unsymmetric,
                      [row = static_cast<int>(n + k)](const Eigen::Triplet<double> &entry) {
                        return entry.row() == row || entry.col() == row;
                      });
      }
    return true;
  };

  Vector x_new = x;
  if (extrapolate > 0 && last_dt_ > 0)
    x_new += extrapolate * dt / last_dt_ * last_dx_;
  if (along_tangent && quasi_static)
    x_new = linear_guess();
  for (unsigned k = 0; k < prescribed.size(); ++k)
    if (prescribed[k])
      x_new[n + k] = *prescribed[k];
  StepOutcome outcome;
  // Shorter steps mend most; what they do not mend has no path to follow, and the stack falls into another
  // state.
  const bool descends = solver_->symmetric() && n_failures >= n_plain_tries;
  const auto stiffen = [this](double share, Tangent &tangent) { equation_.stiffen(share, tangent); };
  double     change = 1;
  for (unsigned pass = 0; change > settled_change; ++pass)
  {
    if (pass == most_passes)
      return failed_step("friction does not settle", outcome);
    const auto solved = descends ? descend(evaluate, stiffen, *solver_, x_new, force_scale,
                                           {.tolerance = newton_settings.tolerance})
                                 : newton(evaluate, *solver_, x_new, force_scale, newton_settings);
    outcome.n_iterations += solved.n_iterations;
    n_iterations += solved.n_iterations;
    if (!solved.converged)
      return failed_step(solved.reason, outcome);
    change = 0;
    for (auto &contribution : equation_.contributions)
      change = std::max(change, contribution->settle(x_new));
  }

  // Newton's method lands beyond a fall without a word of it; the account would call what that sets free an
  // error.
  if (quasi_static && !descends && longest_way_to(x_new) > longest_way)
    return failed_step("the stack gives way under the force", outcome);

  const Vector a_new = quasi_static ? Vector::Zero(x.size()) : new_acceleration(x_new);
  const Vector v_new =
    quasi_static ? Vector::Zero(x.size()) : Vector(v + dt * ((1 - c.gamma) * a + c.gamma * a_new));
  const Vector dx = x_new - x;
  // Work of the forces as the scheme balances them; without inertia both ends are in balance and count alike.
  const double old_share = quasi_static ? 0.5 : c.alpha_f;
  const Vector mixed = (1 - old_share) * new_force + old_share * force_;
  double       work = mixed.dot(dx), kinetic = 0;
  if (!quasi_static)
  {
    const double before = kinetic_energy();
    kinetic = equation_.inertia((1 - c.alpha_m) * a_new + c.alpha_m * a).dot(dx);
    numerical_ += kinetic - (0.5 * v_new.dot(equation_.inertia(v_new)) - before);
  }
  double driven = 0;
  for (unsigned k = 0; k < prescribed.size(); ++k)
    if (prescribed[k])
      driven += (quasi_static ? mixed[n + k] : unbalanced[k]) * dx[n + k];
    else if (quasi_static && was_prescribed_[k])
      driven += old_share * force_[n + k] * dx[n + k]; // what held the body lets go along this way
  prescribed_work_ += driven;
  residual_ -= work + kinetic - driven;

  for (unsigned k = 0; k < prescribed.size(); ++k)
    was_prescribed_[k] = prescribed[k].has_value();
  last_dx_ = dx, last_dt_ = descends ? 0 : dt;
  n_failures = 0, n_descents += descends;
  x = x_new, v = v_new, a = a_new, force_ = new_force;
  if (open_parts)
    part_accounts_.work(x, dx, old_share);
  equation_.accept(x, dt);
  if (open_parts)
    part_accounts_.close(*open_parts);
  energies_ = equation_.energies();
  const double energy = sum(energies_);
  // What a fall sets free rings in the stack and dies there: no error of the scheme.
  const double freed = work - (energy - energy_sum_);
  (descends && freed > 0 ? fallen_ : numerical_) += freed;
  energy_sum_ = energy;
  time += dt;
  ++n_steps;
  outcome.advanced = true;
  return outcome;
}
} // namespace solemech::solver
