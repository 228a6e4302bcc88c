// SPDX-License-Identifier: Apache-2.0
// The bordered sparse factorisation against a dense solve and dense eigenvalues.
#include "solver/linear/bordered_solver.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// Two solves in double, one of them without pivots, of systems of condition number 1e3 or less.
constexpr double same_solution = 1e-10;

struct System
{
  solver::Discretisation mesh;
  solver::Tangent        tangent;
  Eigen::MatrixXd        dense;
};

/// Random tangent; its sparse part has the diagonal `diagonal`.
System random_system(Random &random, int n_bodies, int n_gas, double diagonal)
{
  System system{
    {grid(even_lines(0, 1, 4), even_lines(0, 1, 3)), MeshSection::plane_strain, HeldFaces{}}, {}, {}};
  const auto &pattern = system.mesh.pattern();
  const int   n = system.mesh.n_unknowns(), size = n + n_bodies;
  auto       &t = system.tangent;
  t.reset(pattern.nonZeros(), n, n_bodies);
  solver::SparseMatrix sparse = pattern;
  for (int i = 0; i < sparse.nonZeros(); ++i)
    sparse.valuePtr()[i] = random();
  for (int i = 0; i < n; ++i)
    sparse.coeffRef(i, i) = diagonal;
  std::copy_n(sparse.valuePtr(), sparse.nonZeros(), t.values.begin());
  for (int b = 0; b < n_bodies; ++b)
    t.coupling.col(b) = random.vector(n);
  t.bodies.diagonal().setConstant(diagonal);
  for (int g = 0; g < n_gas; ++g)
    t.rank_one.push_back({random.vector(n), 3.0 + g});

  system.dense = Eigen::MatrixXd::Zero(size, size);
  system.dense.topLeftCorner(n, n) = Eigen::MatrixXd(sparse).selfadjointView<Eigen::Lower>();
  for (const auto &term : t.rank_one)
    system.dense.topLeftCorner(n, n) += term.c * term.g * term.g.transpose();
  system.dense.topRightCorner(n, n_bodies) = t.coupling;
  system.dense.bottomLeftCorner(n_bodies, n) = t.coupling.transpose();
  system.dense.bottomRightCorner(n_bodies, n_bodies) = t.bodies;
  return system;
}
} // namespace

TEST_CASE("the bordered solver solves what a dense solver solves", "[bordered_solver]")
{
  Random random;
  for (const int n_bodies : {0, 1, 2})
    for (const int n_gas : {0, 1, 2})
      for (const double diagonal : {40.0, 3.0}) // 3: indefinite
      {
        INFO(n_bodies << " bodies, " << n_gas << " chambers, diagonal " << diagonal);
        const auto             system = random_system(random, n_bodies, n_gas, diagonal);
        solver::BorderedSolver solver(system.mesh.pattern());
        REQUIRE(solver.factorise(system.tangent));
        const Vector right_side = random.vector(system.dense.rows());
        const Vector expected = system.dense.fullPivLu().solve(right_side);
        CHECK((solver.solve(right_side) - expected).norm() < same_solution * expected.norm());
        const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(system.dense, Eigen::EigenvaluesOnly);
        CHECK(solver.indefinite() == (eigen.eigenvalues()[0] < 0));
        CHECK(solver.indefinite() == (diagonal < 10));
      }
}

TEST_CASE("unsymmetric terms beside bodies and chambers, against a dense solve", "[bordered_solver]")
{
  Random random;
  for (const int n_bodies : {0, 1, 3})
    for (const int n_gas : {0, 1, 2})
      for (const double diagonal : {40.0, 3.0}) // 3: indefinite before the unsymmetric terms
      {
        INFO(n_bodies << " bodies, " << n_gas << " chambers, diagonal " << diagonal);
        auto        system = random_system(random, n_bodies, n_gas, diagonal);
        const auto &pattern = system.mesh.pattern();
        const int   n = system.mesh.n_unknowns();
        const auto  put = [&](int row, int column) {
          const double value = random();
          system.tangent.unsymmetric.emplace_back(row, column, value);
          system.dense(row, column) += value;
        };
        for (int column = 0; column < n; column += 3)
          for (solver::SparseMatrix::InnerIterator entry(pattern, column); entry; ++entry)
            put(entry.row(), column), put(column, entry.row());
        for (int body = 0; body < n_bodies; ++body)
        {
          put(body, n + body), put(n + body, 2 * body + 1);
          put(n + body, n + (body + 1) % n_bodies);
        }
        solver::BorderedSolver solver(pattern);
        REQUIRE(solver.factorise(system.tangent));
        CHECK_FALSE(solver.indefinite());
        const Vector right_side = random.vector(system.dense.rows());
        const Vector expected = system.dense.fullPivLu().solve(right_side);
        CHECK((solver.solve(right_side) - expected).norm() < same_solution * expected.norm());
        // Back to a symmetric one.
        system.tangent.unsymmetric.clear();
        REQUIRE(solver.factorise(system.tangent));
        CHECK(solver.indefinite() == (diagonal < 10));
      }
}

TEST_CASE("gas alone can hold an unstable body, and the pivots say so", "[bordered_solver]")
{
  // A sparse part with one negative direction that the rank-one term lifts.
  Random    random;
  auto      system = random_system(random, 0, 0, 40);
  const int n = system.dense.rows();
  // Pull the whole diagonal down until exactly one eigenvalue is negative.
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(system.dense);
  const double shift = 0.5 * (eigen.eigenvalues()[0] + eigen.eigenvalues()[1]);
  for (int i = 0; i < n; ++i)
    system.tangent.values[system.mesh.slot(i, i)] -= shift;
  solver::BorderedSolver solver(system.mesh.pattern());
  REQUIRE(solver.factorise(system.tangent));
  CHECK(solver.indefinite());
  system.tangent.rank_one.push_back({eigen.eigenvectors().col(0), 2 * (shift - eigen.eigenvalues()[0])});
  REQUIRE(solver.factorise(system.tangent));
  CHECK_FALSE(solver.indefinite());
  system.tangent.rank_one.front().c *= 0.25; // half of what it takes
  REQUIRE(solver.factorise(system.tangent));
  CHECK(solver.indefinite());
}

TEST_CASE("a singular tangent is refused", "[bordered_solver]")
{
  Random random;
  auto   system = random_system(random, 0, 0, 40);
  std::fill(system.tangent.values.begin(), system.tangent.values.end(), 0.0);
  solver::BorderedSolver solver(system.mesh.pattern());
  CHECK_FALSE(solver.factorise(system.tangent));
}

TEST_CASE("a weight in a very short step beside a chamber is not taken for a loss of rank",
          "[bordered_solver]")
{
  // m/dt^2 of 1 kg in a nanosecond against the gas's own unknown of order one.
  Random    random;
  auto      system = random_system(random, 1, 1, 40);
  const int n = system.dense.rows() - 1;
  system.tangent.bodies(0, 0) = system.dense(n, n) = 1e18;
  solver::BorderedSolver solver(system.mesh.pattern());
  REQUIRE(solver.factorise(system.tangent));
  CHECK_FALSE(solver.indefinite());
  Vector right_side = random.vector(n + 1);
  right_side[n] *= 1e18; // moves of order one for both
  // Without a judgement on rank, which would fall into the same trap.
  const Vector expected = system.dense.partialPivLu().solve(right_side);
  CHECK((solver.solve(right_side) - expected).norm() < same_solution * expected.norm());
}
