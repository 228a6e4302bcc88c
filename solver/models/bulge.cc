// SPDX-License-Identifier: Apache-2.0
#include "solver/models/bulge.h"

#include <Eigen/SparseCholesky>

#include <array>

namespace solemech::solver
{
namespace
{
/// Corner of one of the four quarters of a cell of nine nodes.
constexpr std::array<unsigned, 4> quarters{0, 1, 3, 4};
} // namespace

void follow_bulge(const Discretisation &mesh, std::vector<bool> fixed, std::vector<Point> &displacement)
{
  for (const auto &face : mesh.mesh().faces)
    if (face.id < static_cast<int>(geometry::BoundaryId::chamber_first) &&
        face.id != static_cast<int>(geometry::BoundaryId::axis))
      for (const unsigned node : mesh.edge(face))
        fixed[node] = true;
  using Matrix = Eigen::SparseMatrix<double>;
  const auto                          n = static_cast<int>(mesh.n_nodes());
  std::vector<Eigen::Triplet<double>> entries;
  Eigen::MatrixX2d                    right = Eigen::MatrixX2d::Zero(n, 2);
  const auto                          couple = [&](unsigned i, unsigned j, double weight) {
    for (const auto &[from, to] : {std::pair(i, j), std::pair(j, i)})
      if (!fixed[from])
      {
        entries.emplace_back(from, from, weight);
        if (fixed[to])
          right.row(from) += weight * Eigen::RowVector2d(displacement[to][0], displacement[to][1]);
        else
          entries.emplace_back(from, to, -weight);
      }
  };
  for (const auto &cell : mesh.cells())
  {
    const auto  &nodes = mesh.nodes();
    const double width = 0.5 * (nodes[cell[2]][0] - nodes[cell[0]][0]),
                 height = 0.5 * (nodes[cell[6]][1] - nodes[cell[0]][1]);
    for (const unsigned a : quarters)
    {
      for (const unsigned row : {a, a + 3})
        couple(cell[row], cell[row + 1], 0.5 * height / width);
      for (const unsigned column : {a, a + 1})
        couple(cell[column], cell[column + 3], 0.5 * width / height);
    }
  }
  for (int i = 0; i < n; ++i)
    if (fixed[i])
    {
      entries.emplace_back(i, i, 1.0);
      right.row(i) << displacement[i][0], displacement[i][1];
    }
  Matrix laplacian(n, n);
  laplacian.setFromTriplets(entries.begin(), entries.end());
  const Eigen::MatrixX2d found = Eigen::SimplicialLDLT<Matrix>(laplacian).solve(right);
  for (int i = 0; i < n; ++i)
    if (!fixed[i])
      displacement[i] = {mesh.dof(i, 0) < 0 ? 0.0 : found(i, 0), found(i, 1)};
}

bool keeps_cells(const Discretisation &mesh, const std::vector<bool> &on_film,
                 const std::vector<Point> &displacement)
{
  const auto place = [&](unsigned node) {
    return Eigen::Vector2d(mesh.nodes()[node][0] + displacement[node][0],
                           mesh.nodes()[node][1] + displacement[node][1]);
  };
  for (const auto &cell : mesh.cells())
    for (const unsigned a : quarters)
    {
      if (on_film[cell[4]]) // the node in the middle is nobody else's
        continue;
      const std::array<unsigned, 4> round{cell[a], cell[a + 1], cell[a + 4], cell[a + 3]};
      for (unsigned k = 0; k < 4; ++k)
      {
        const Eigen::Vector2d on = place(round[(k + 1) % 4]) - place(round[k]),
                              back = place(round[(k + 3) % 4]) - place(round[k]);
        if (on.x() * back.y() - on.y() * back.x() <= 0)
          return false;
      }
    }
  return true;
}
} // namespace solemech::solver
