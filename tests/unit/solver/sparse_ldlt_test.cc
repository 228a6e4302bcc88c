// SPDX-License-Identifier: Apache-2.0
// The multifrontal factorisation against Eigen's simplicial one (eigen.tuxfamily.org, SimplicialLDLT), on
// meshes of several sizes, on matrices of many small blocks, and with both instruction sets of the dense
// fronts.
#include "solver/linear/sparse_ldlt.h"
#include "tests/support/single_body.h"

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
  solver::SparseLdlt                          ours(matrix);
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

TEST_CASE("the multifrontal factorisation agrees with a simplicial one", "[sparse_ldlt]")
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

TEST_CASE("unknowns that hang together in several pieces, or not at all", "[sparse_ldlt]")
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

TEST_CASE("factors of new values replace the old ones", "[sparse_ldlt]")
{
  Random             random;
  const auto         grid = mesh(6, 4);
  solver::SparseLdlt ours(grid.pattern());
  const Vector       right_side = random.vector(grid.n_unknowns());
  for (int go = 0; go < 3; ++go)
  {
    const Sparse matrix = with_values(grid.pattern(), random, 100, 0);
    REQUIRE(ours.factorise(matrix.valuePtr()));
    const Vector obtained = ours.solve(right_side);
    CHECK((matrix.selfadjointView<Eigen::Lower>() * obtained - right_side).norm() <
          same_solution * right_side.norm());
  }
}

TEST_CASE("half solves make the whole", "[sparse_ldlt]")
{
  // b^T A^-1 c = (L^-1 b)^T D^-1 (L^-1 c)
  Random             random;
  const auto         grid = mesh(4, 4);
  const Sparse       matrix = with_values(grid.pattern(), random, 100, 3);
  solver::SparseLdlt ours(matrix);
  REQUIRE(ours.factorise(matrix.valuePtr()));
  const Vector b = random.vector(matrix.rows()), c = random.vector(matrix.rows());
  const double half = ours.forward(b).dot(ours.inverse_pivots().cwiseProduct(ours.forward(c)));
  CHECK(std::abs(half - b.dot(ours.solve(c))) < same_solution * b.norm() * c.norm());
}

TEST_CASE("a vanishing pivot is refused", "[sparse_ldlt]")
{
  Random             random;
  Sparse             matrix = with_values(mesh(3, 3).pattern(), random, 100, 0);
  solver::SparseLdlt ours(matrix);
  std::fill_n(matrix.valuePtr(), matrix.nonZeros(), 0.0);
  CHECK_FALSE(ours.factorise(matrix.valuePtr()));
}

TEST_CASE("both instruction sets eliminate a front alike", "[sparse_ldlt]")
{
  Random random;
  for (const auto &size : {solver::FrontSize{4, 0}, solver::FrontSize{4, 4}, solver::FrontSize{12, 20}})
  {
    const int           height = size.height();
    std::vector<double> panel[2], update[2], pivots[2];
    for (int i = 0; i < height * size.n_pivots; ++i)
      panel[0].push_back(random());
    for (int i = 0; i < size.n_pivots; ++i)
      panel[0][i * (height + 1)] = 30;
    for (int i = 0; i < size.n_rows * size.n_rows; ++i)
      update[0].push_back(random());
    panel[1] = panel[0], update[1] = update[0];
    const solver::InstructionSet sets[] = {solver::InstructionSet::baseline, solver::best_instruction_set()};
    for (int set = 0; set < 2; ++set)
    {
      std::vector<double> work(panel[0].size());
      pivots[set].resize(size.n_pivots);
      solver::make_front_kernel(sets[set])->eliminate(size, panel[set].data(), update[set].data(),
                                                      pivots[set].data(), work.data());
    }
    double furthest = 0;
    for (int c = 0; c < size.n_pivots; ++c)
      for (int r = c + 1; r < height; ++r)
        furthest = std::max(furthest, std::abs(panel[0][c * height + r] - panel[1][c * height + r]));
    for (int c = 0; c < size.n_rows; ++c)
      for (int r = c; r < size.n_rows; ++r)
        furthest =
          std::max(furthest, std::abs(update[0][c * size.n_rows + r] - update[1][c * size.n_rows + r]));
    for (int c = 0; c < size.n_pivots; ++c)
      furthest = std::max(furthest, std::abs(pivots[0][c] / pivots[1][c] - 1));
    CHECK(furthest < 1e-14);
  }
}
