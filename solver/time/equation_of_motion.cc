// SPDX-License-Identifier: Apache-2.0
#include "solver/time/equation_of_motion.h"

#include <algorithm>

namespace solemech::solver
{
RigidBody EquationOfMotion::add(RigidBody body)
{
  body.check();
  body.first = size();
  rigid_inertia.conservativeResize(n_freedoms() + body.n_freedoms());
  for (int k = 0; k < body.n_freedoms(); ++k)
    rigid_inertia[body.first - n_unknowns() + k] = body.inertia[k];
  bodies.push_back(std::move(body));
  return bodies.back();
}

bool EquationOfMotion::has_potential() const
{
  return std::all_of(contributions.begin(), contributions.end(),
                     [](const auto &contribution) { return contribution->has_potential(); });
}

void EquationOfMotion::begin_step(const Vector &x, double dt)
{
  for (auto &contribution : contributions)
    contribution->begin_step(x, dt);
}

bool EquationOfMotion::forces(const Vector &x, Vector &force, Tangent *tangent, std::string &failed) const
{
  force.setZero(size());
  if (tangent)
    tangent->reset(numbering->pattern().nonZeros(), n_unknowns(), n_freedoms());
  for (const auto &contribution : contributions)
    if (!contribution->add(x, force, tangent))
    {
      failed = contribution->name();
      return false;
    }
  if (!force.allFinite())
  {
    failed = "forces";
    return false;
  }
  return true;
}

void EquationOfMotion::accept(const Vector &x, double dt)
{
  for (auto &contribution : contributions)
    contribution->accept(x, dt);
}

Vector EquationOfMotion::inertia(const Vector &a) const
{
  Vector                         out(size());
  const auto                    &pattern = numbering->pattern();
  const int                      n = n_unknowns();
  Eigen::Map<const SparseMatrix> matrix(n, n, pattern.nonZeros(), pattern.outerIndexPtr(),
                                        pattern.innerIndexPtr(), mass.data());
  out.head(n) = matrix.selfadjointView<Eigen::Lower>() * a.head(n);
  out.tail(n_freedoms()) = rigid_inertia.cwiseProduct(a.tail(n_freedoms()));
  return out;
}

void EquationOfMotion::add_mass(double factor, Tangent &tangent) const
{
  for (std::size_t i = 0; i < mass.size(); ++i)
    tangent.values[i] += factor * mass[i];
  tangent.bodies.diagonal() += factor * rigid_inertia;
}

void EquationOfMotion::stiffen(double share, Tangent &tangent) const
{
  std::vector<double> ratios;
  for (int i = 0; i < n_unknowns(); ++i)
  {
    const int diagonal =
      numbering->pattern().outerIndexPtr()[i]; // the first of its column in a lower triangle
    ratios.push_back(std::abs(tangent.values[diagonal]) / mass[diagonal]);
  }
  const auto middle = ratios.begin() + ratios.size() / 2;
  std::nth_element(ratios.begin(), middle, ratios.end());
  add_mass(share * *middle, tangent);
}

std::vector<EnergyEntry> EquationOfMotion::energies() const
{
  std::vector<EnergyEntry> entries;
  for (const auto &contribution : contributions)
    contribution->energies(entries);
  return entries;
}
} // namespace solemech::solver
