// SPDX-License-Identifier: Apache-2.0
#include "solver/time/generalised_alpha.h"

#include "solver/time/correcting_solver.h"
#include "solver/time/no_balance.h"

#include <cmath>

namespace solemech::solver
{
TimeIntegrator::TimeIntegrator(EquationOfMotion &equation, double spectral_radius)
  : equation_(equation), coefficients_(alpha_coefficients(spectral_radius)),
    solver_(make_run_solver(equation.numbering->pattern())), part_accounts_(equation)
{
  x = v = a = Vector::Zero(equation.size());
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
  if (open_parts_)
    part_accounts_.start(x);
  equation_.accept(x, 0);
  if (open_parts_)
    part_accounts_.close(*open_parts_);
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

Vector TimeIntegrator::linear_guess(const std::vector<LedUnknown> &led) const
{
  Vector      force;
  Tangent     tangent;
  std::string failed;
  if (!equation_.forces(x, force, &tangent, failed))
    return x;
  const auto &pattern = equation_.numbering->pattern();
  Vector      way = Vector::Zero(x.size());
  for (const auto &one : led)
    way[one.unknown] = one.value - x[one.unknown];
  Vector right = -force - product(tangent, pattern, way);
  for (const auto &one : led)
    right[one.unknown] = way[one.unknown];
  constrain(led, pattern, tangent);
  if (!solver_->factorise(tangent))
    return x;
  const Vector guess = x + solver_->solve(right);
  return guess.allFinite() && equation_.forces(guess, force, nullptr, failed) ? guess : x;
}

Vector TimeIntegrator::first_guess(double dt, const StepSettings &settings,
                                   const std::vector<LedUnknown> &led) const
{
  Vector guess = x;
  if (settings.along_tangent && settings.quasi_static)
    guess = linear_guess(led);
  else if (settings.extrapolate > 0 && last_dt_ > 0)
    guess += settings.extrapolate * dt / last_dt_ * last_dx_;
  for (const auto &one : led)
    guess[one.unknown] = one.value;
  return guess;
}

std::string TimeIntegrator::find_balance(StepEquation &balance, const StepSettings &settings, bool descends,
                                         Vector &x_new)
{
  const auto evaluate = [&](const Vector &at, Vector &residual, Tangent *tangent, std::string &failed) {
    return balance.residual(at, residual, tangent, failed);
  };
  const auto stiffen = [this](double share, Tangent &tangent) { equation_.stiffen(share, tangent); };
  double     change = 1;
  for (unsigned pass = 0; change > settled_change; ++pass)
  {
    if (pass == most_passes)
      return "friction does not settle";
    const auto solved = descends ? descend(evaluate, stiffen, *solver_, x_new, settings.force_scale,
                                           {.tolerance = settings.newton.tolerance})
                                 : newton(evaluate, *solver_, x_new, settings.force_scale, settings.newton);
    n_iterations += solved.n_iterations;
    if (!solved.converged)
      return solved.reason;
    change = 0;
    for (auto &contribution : equation_.contributions)
      change = std::max(change, contribution->settle(x_new));
  }
  // Newton's method lands beyond a fall without a word of it; the account would call what that sets free an
  // error.
  if (settings.quasi_static && !descends && longest_way_to(x_new) > settings.longest_way)
    return "the stack gives way under the force";
  return {};
}

StepOutcome TimeIntegrator::step(double dt, const StepSettings &settings)
{
  equation_.begin_step(x, dt);
  StepEquation balance(equation_, coefficients_, settings.quasi_static, dt, {x, v, a, force_},
                       equation_.boundary.at(time + dt));
  Vector       x_new = first_guess(dt, settings, balance.led());
  // Shorter steps mend most; what they do not mend has no path to follow, and the stack falls into another
  // state.
  const bool  descends = equation_.has_potential() && (settings.descend || n_failures >= n_plain_tries);
  StepOutcome outcome;
  outcome.reason = find_balance(balance, settings, descends, x_new);
  outcome.advanced = outcome.reason.empty();
  if (outcome.advanced)
    take(balance, x_new, dt, descends);
  else // the next try starts from the accepted state
    ++n_repeated, ++n_failures, last_dt_ = 0;
  return outcome;
}

void TimeIntegrator::take(const StepEquation &balance, const Vector &x_new, double dt, bool fell)
{
  const auto   work = balance.work(x_new, was_led_);
  const double moving = kinetic_energy();
  const Vector dx = x_new - x, v_new = balance.speed(x_new), a_new = balance.acceleration(x_new);
  x = x_new, v = v_new, a = a_new, force_ = balance.force();
  if (balance.has_inertia())
    numerical_ += work.inertia - (kinetic_energy() - moving);
  driven_work_ += work.driven;
  residual_ -= work.forces + work.inertia - work.driven;
  was_led_ = balance.led();
  last_dx_ = dx, last_dt_ = fell ? 0 : dt;
  n_failures = 0, n_descents += fell;
  if (open_parts_)
    part_accounts_.work(x, dx, balance.old_share());
  equation_.accept(x, dt);
  if (open_parts_)
    part_accounts_.close(*open_parts_);
  energies_ = equation_.energies();
  const double energy = sum(energies_);
  // What a fall sets free rings in the stack and dies there: no error of the scheme.
  const double freed = work.forces - (energy - energy_sum_);
  (fell && freed > 0 ? fallen_ : numerical_) += freed;
  energy_sum_ = energy;
  time += dt;
  ++n_steps;
}
} // namespace solemech::solver
