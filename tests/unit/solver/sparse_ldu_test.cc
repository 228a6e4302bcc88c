// SPDX-License-Identifier: Apache-2.0
// The multifrontal factorisation against Eigen's simplicial one (eigen.tuxfamily.org, SimplicialLDLT), where
// entries are unsymmetric against its dense LU with pivots, on meshes of several sizes, on matrices of many
// small blocks, and with both instruction sets of the dense fronts.
#include "solver/linear/sparse_ldu.h"
#include "tests/support/single_body.h"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

using namespace solemech;
using namespace solemech::tests;

namespace
{
using Sparse = Eigen::SparseMatrix<double>;

/// Two backward stable solves of a system of condition number c differ by some c roundings; c < 1e3 here.
constexpr double same_solution = 1e-12;

/// Random values on a pattern; `diagonal` on the diagonal, with every `n_turned`-th sign turned.
Sparse with_values(Sparse pattern, Random &random, double diagonal, int n_turned)
{
  for (int i = 0; i < pattern.nonZeros(); ++i)
    pattern.valuePtr()[i] = random();
  for (int i = 0; i < pattern.rows(); ++i)
    pattern.coeffRef(i, i) = n_turned > 0 && i % n_turned == 0 ? -diagonal : diagonal;
  return pattern;
}

void compare(const Sparse &matrix, Random &random)
{
  solver::SparseLdu                           ours(matrix);
  Eigen::SimplicialLDLT<Sparse, Eigen::Lower> theirs(matrix);
  REQUIRE(ours.factorise(matrix.valuePtr()));
  REQUIRE(theirs.info() == Eigen::Success);
  CHECK(ours.n_negative() == (theirs.vectorD().array() < 0).count());
  const Vector right_side = random.vector(matrix.rows());
  const Vector expected = theirs.solve(right_side), obtained = ours.solve(right_side);
  CHECK((obtained - expected).norm() < same_solution * expected.norm());
}

solver::Discretisation mesh(unsigned n_across, unsigned n_high)
{
  return {grid(even_lines(0, 1, n_across), even_lines(0, 1, n_high)), MeshSection::plane_strain, HeldFaces{}};
}
} // namespace

TEST_CASE("the multifrontal factorisation agrees with a simplicial one", "[sparse_ldu]")
{
  Random random;
  for (const unsigned n : {1u, 2u, 5u, 13u, 24u})
    for (const int n_turned : {0, 1, 7})
    {
      INFO(n << " cells across, sign turned every " << n_turned);
      const auto grid = mesh(n, (n + 1) / 2);
      compare(with_values(grid.pattern(), random, 100, n_turned), random);
    }
}

TEST_CASE("unknowns that hang together in several pieces, or not at all", "[sparse_ldu]")
{
  Random random;
  for (const int n : {1, 2, 3, 4, 5, 17})
  {
    Sparse diagonal(n, n);
    diagonal.setIdentity();
    compare(with_values(diagonal, random, 3, 2), random);
  }
  // Arrows of growing size along the diagonal.
  std::vector<Eigen::Triplet<double>> entries;
  int                                 n = 0;
  for (int size = 1; size < 12; n += size++)
    for (int i = 0; i < size; ++i)
    {
      entries.emplace_back(n + i, n + i, 1.0);
      if (i > 0)
        entries.emplace_back(n + i, n, 1.0);
    }
  Sparse arrows(n, n);
  arrows.setFromTriplets(entries.begin(), entries.end());
  compare(with_values(arrows, random, 20, 5), random);
}

TEST_CASE("factors of new values replace the old ones", "[sparse_ldu]")
{
  Random            random;
  const auto        grid = mesh(6, 4);
  solver::SparseLdu ours(grid.pattern());
  const Vector      right_side = random.vector(grid.n_unknowns());
  for (int go = 0; go < 3; ++go)
  {
    const Sparse matrix = with_values(grid.pattern(), random, 100, 0);
    REQUIRE(ours.factorise(matrix.valuePtr()));
    const Vector obtained = ours.solve(right_side);
    CHECK((matrix.selfadjointView<Eigen::Lower>() * obtained - right_side).norm() <
          same_solution * right_side.norm());
  }
}

TEST_CASE("half solves make the whole", "[sparse_ldu]")
{
  // b^T A^-1 c = (L^-1 b)^T D^-1 (L^-1 c)
  Random            random;
  const auto        grid = mesh(4, 4);
  const Sparse      matrix = with_values(grid.pattern(), random, 100, 3);
  solver::SparseLdu ours(matrix);
  REQUIRE(ours.factorise(matrix.valuePtr()));
  const Vector b = random.vector(matrix.rows()), c = random.vector(matrix.rows());
  const double half = ours.forward(b).dot(ours.inverse_pivots().cwiseProduct(ours.forward(c)));
  CHECK(std::abs(half - b.dot(ours.solve(c))) < same_solution * b.norm() * c.norm());
}

TEST_CASE("unsymmetric entries, in a corner of the matrix or all over it", "[sparse_ldu]")
{
  Random random;
  for (const unsigned n : {2u, 5u, 9u})
    for (const int every : {1, 40, 1000000}) // 1: all; the last: the first entry alone
      for (const int n_turned : {0, 7})
      {
        INFO(n << " cells across, one entry out of " << every << ", sign turned every " << n_turned);
        const auto                 grid = mesh(n, (n + 1) / 2);
        const Sparse               matrix = with_values(grid.pattern(), random, 100, n_turned);
        solver::SparseLdu::Entries entries;
        Eigen::MatrixXd            dense = Eigen::MatrixXd(matrix).selfadjointView<Eigen::Lower>();
        int                        count = 0;
        for (int column = 0; column < matrix.cols(); ++column)
          for (Sparse::InnerIterator entry(matrix, column); entry; ++entry)
            for (const auto &[i, j] : {std::pair<int, int>(entry.row(), column), {column, entry.row()}})
              if (count++ % every == 0)
              {
                entries.emplace_back(i, j, random());
                dense(i, j) += entries.back().value();
              }
        solver::SparseLdu ours(matrix);
        for (int go = 0; go < 2; ++go) // the second after factors of a symmetric matrix
        {
          REQUIRE(ours.factorise(matrix.valuePtr(), entries));
          const Vector b = random.vector(matrix.rows()), c = random.vector(matrix.rows());
          const Vector expected = dense.partialPivLu().solve(b);
          CHECK((ours.solve(b) - expected).norm() < same_solution * expected.norm());
          const double half =
            ours.forward_transposed(c).dot(ours.inverse_pivots().cwiseProduct(ours.forward(b)));
          CHECK(std::abs(half - c.dot(expected)) < same_solution * b.norm() * c.norm());
          REQUIRE(ours.factorise(matrix.valuePtr()));
          const Vector symmetric = matrix.selfadjointView<Eigen::Lower>() * ours.solve(b);
          CHECK((symmetric - b).norm() < same_solution * b.norm());
        }
      }
}

TEST_CASE("an entry outside the pattern is refused", "[sparse_ldu]")
{
  Sparse diagonal(8, 8);
  diagonal.setIdentity();
  solver::SparseLdu ours(diagonal);
  CHECK_THROWS_AS(ours.factorise(diagonal.valuePtr(), {{0, 7, 1.0}}), std::invalid_argument);
}

TEST_CASE("a vanishing pivot is refused", "[sparse_ldu]")
{
  Random            random;
  Sparse            matrix = with_values(mesh(3, 3).pattern(), random, 100, 0);
  solver::SparseLdu ours(matrix);
  std::fill_n(matrix.valuePtr(), matrix.nonZeros(), 0.0);
  CHECK_FALSE(ours.factorise(matrix.valuePtr()));
}

TEST_CASE("both instruction sets eliminate a front alike", "[sparse_ldu]")
{
  Random random;
  for (const bool symmetric : {true, false})
    for (const auto &size : {solver::FrontSize{4, 0}, solver::FrontSize{4, 4}, solver::FrontSize{12, 20}})
    {
      const int height = size.height();
      /// Panels of both halves, then their updates and pivots.
      std::array<std::vector<double>, 5> parts[2];
      for (int half = 0; half < 2; ++half)
      {
        for (int i = 0; i < height * size.n_pivots; ++i)
          parts[0][half].push_back(i % (height + 1) == 0 ? 30 : random());
        for (int i = 0; i < size.n_rows * size.n_rows; ++i)
          parts[0][2 + half].push_back(random());
      }
      parts[0][4].resize(size.n_pivots);
      parts[1] = parts[0];
      const solver::InstructionSet sets[] = {solver::InstructionSet::baseline,
                                             solver::best_instruction_set()};
      for (int set = 0; set < 2; ++set)
      {
        auto                   &part = parts[set];
        std::vector<double>     work[2]{part[0], part[0]};
        const solver::FrontHalf below{part[0].data(), part[2].data(), work[0].data()};
        const solver::FrontHalf above{part[1].data(), part[3].data(), work[1].data()};
        solver::make_front_kernel(sets[set])->eliminate(size, below, symmetric ? below : above,
                                                        part[4].data());
      }
      const auto lower = [](const std::vector<double> &square, int n_columns) {
        const int       rows = n_columns > 0 ? square.size() / n_columns : 0;
        Eigen::MatrixXd all = Eigen::Map<const Eigen::MatrixXd>(square.data(), rows, n_columns);
        return Eigen::MatrixXd(all.triangularView<Eigen::StrictlyLower>());
      };
      for (int half = 0; half < (symmetric ? 1 : 2); ++half)
      {
        CHECK((lower(parts[0][half], size.n_pivots) - lower(parts[1][half], size.n_pivots)).norm() < 1e-14);
        CHECK((lower(parts[0][2 + half], size.n_rows) - lower(parts[1][2 + half], size.n_rows)).norm() <
              1e-13);
      }
      for (int c = 0; c < size.n_pivots; ++c)
        CHECK(std::abs(parts[0][4][c] / parts[1][4][c] - 1) < 1e-14);
    }
}
