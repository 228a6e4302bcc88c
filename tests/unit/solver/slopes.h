// SPDX-License-Identifier: Apache-2.0
// Force of a contribution against the slope of its energy, tangent against the slope of its force, by central
// differences in every unknown; a small body to try them on.
#pragma once

#include "tests/support/single_body.h"

namespace solemech::tests
{
/// Central differences of a smooth function with the step below: truncation 1e-9, rounding 1e-8 of the
/// largest.
constexpr double by_differences = 1e-6;
constexpr double difference_step = 1e-8; ///< [m], against lengths of 1e-2 m

constexpr double rounding = 1e-12; ///< of sums of some hundred terms

constexpr double size = 0.01; ///< of a test body [m]

/// A cube-like body of 3 x 2 elements, nothing held but the axis.
inline solver::Discretisation cube(MeshSection section = MeshSection::axisymmetric)
{
  return {grid(even_lines(0, size, 3), even_lines(0, size, 2)), section, HeldFaces{}};
}

inline std::vector<geometry::BoundaryFace> faces(const solver::Discretisation &mesh, geometry::BoundaryId id)
{
  std::vector<geometry::BoundaryFace> out;
  for (const auto &face : mesh.mesh().faces)
    if (face.id == static_cast<int>(id))
      out.push_back(face);
  return out;
}

struct Evaluation
{
  Vector          force;
  Eigen::MatrixXd tangent; ///< completed from the lower triangle, coupling and rank-one terms
};

inline Evaluation evaluate(const solver::Contribution &part, const solver::Numbering &mesh, const Vector &x,
                           int n_bodies)
{
  const int       n = mesh.n_unknowns();
  solver::Tangent tangent;
  tangent.reset(mesh.pattern().nonZeros(), n, n_bodies);
  Evaluation out{Vector::Zero(n + n_bodies), Eigen::MatrixXd::Zero(n + n_bodies, n + n_bodies)};
  REQUIRE(part.add(x, out.force, &tangent));
  solver::SparseMatrix matrix = mesh.pattern();
  std::copy_n(tangent.values.begin(), matrix.nonZeros(), matrix.valuePtr());
  out.tangent.topLeftCorner(n, n) = Eigen::MatrixXd(matrix).selfadjointView<Eigen::Lower>();
  for (const auto &term : tangent.rank_one)
    out.tangent.topLeftCorner(n, n) += term.c * term.g * term.g.transpose();
  out.tangent.topRightCorner(n, n_bodies) = tangent.coupling;
  out.tangent.bottomLeftCorner(n_bodies, n) = tangent.coupling.transpose();
  out.tangent.bottomRightCorner(n_bodies, n_bodies) = tangent.bodies;
  return out;
}

inline Vector force_at(const solver::Contribution &part, const Vector &x)
{
  Vector force = Vector::Zero(x.size());
  REQUIRE(part.add(x, force, nullptr));
  return force;
}

inline void check_tangent(const solver::Contribution &part, const solver::Numbering &mesh, const Vector &x,
                          int n_bodies)
{
  INFO(part.name());
  const auto      here = evaluate(part, mesh, x, n_bodies);
  Eigen::MatrixXd slope(x.size(), x.size());
  for (int i = 0; i < x.size(); ++i)
  {
    Vector up = x, down = x;
    up[i] += difference_step, down[i] -= difference_step;
    slope.col(i) = (force_at(part, up) - force_at(part, down)) / (2 * difference_step);
  }
  CHECK(here.tangent.cwiseAbs().maxCoeff() > 0);
  CHECK((here.tangent - slope).cwiseAbs().maxCoeff() < by_differences * here.tangent.cwiseAbs().maxCoeff());
}

/// Sum of all entries when the state x has been accepted by a copy.
template <typename Part>
double energy_at(Part copy, const Vector &x, double dt)
{
  copy.accept(x, dt);
  std::vector<solver::EnergyEntry> entries;
  copy.energies(entries);
  double sum = 0;
  for (const auto &entry : entries)
    sum += entry.value;
  return sum;
}

template <typename Part>
void check_force(const Part &part, const Vector &x, double dt = 1)
{
  INFO(part.name());
  const Vector force = force_at(part, x);
  Vector       slope(x.size());
  for (int i = 0; i < x.size(); ++i)
  {
    Vector up = x, down = x;
    up[i] += difference_step, down[i] -= difference_step;
    slope[i] = (energy_at(part, up, dt) - energy_at(part, down, dt)) / (2 * difference_step);
  }
  CHECK(force.cwiseAbs().maxCoeff() > 0);
  CHECK((force - slope).cwiseAbs().maxCoeff() < by_differences * force.cwiseAbs().maxCoeff());
}

/// Sum of the vertical components on the mesh.
inline double vertical_sum(const solver::Discretisation &mesh, const Vector &force)
{
  double sum = 0;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    if (const int dof = mesh.dof(node, 1); dof >= 0)
      sum += force[dof];
  return sum;
}

/// A moderate random shape and heights of the rigid bodies [m].
inline Vector random_state(const solver::Numbering &mesh, Random &random, std::vector<double> bodies = {})
{
  Vector x(mesh.n_unknowns() + bodies.size());
  x.head(mesh.n_unknowns()) = 0.01 * size * random.vector(mesh.n_unknowns());
  for (std::size_t i = 0; i < bodies.size(); ++i)
    x[mesh.n_unknowns() + i] = bodies[i];
  return x;
}
} // namespace solemech::tests
