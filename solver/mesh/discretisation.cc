// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/discretisation.h"

#include "solver/kernels/part_laws.h"

#include <Eigen/Dense>
#include <deal.II/dofs/dof_handler.h>
#include <deal.II/fe/fe_q.h>
#include <deal.II/fe/fe_tools.h>
#include <deal.II/grid/tria.h>

#include <algorithm>
#include <numbers>
#include <numeric>
#include <span>

namespace solemech::solver
{
namespace
{
constexpr std::array<double, 3> gauss_weights{5.0 / 18, 8.0 / 18, 5.0 / 18};

double shape_slope(unsigned node, double s)
{
  return node == 0 ? 4 * s - 3 : node == 1 ? 4 - 8 * s : 4 * s - 1;
}
} // namespace

EdgeShapes edge_shapes(double s)
{
  EdgeShapes shapes;
  for (unsigned a = 0; a < 3; ++a)
    shapes.value[a] = quadratic_shape(a, s), shapes.slope[a] = shape_slope(a, s);
  return shapes;
}

Discretisation::Discretisation(const geometry::PlugMesh &mesh, MeshSection section, const Held &held)
  : mesh_(mesh), section_(section)
{
  number_nodes();
  std::vector<bool> fixed(2 * nodes_.size(), false);
  for (const auto &face : mesh_.faces)
  {
    const auto hold = held(face);
    for (const unsigned node : edge(face))
      for (unsigned c = 0; c < 2; ++c)
        if (hold[c])
          fixed[2 * node + c] = true;
  }
  // Joined faces move alike: the nodes of the second one take the unknowns of the first.
  std::vector<unsigned> owner(nodes_.size());
  std::iota(owner.begin(), owner.end(), 0u);
  for (const auto &[first, second] : mesh_.joined_faces)
  {
    const auto a = edge(mesh_.faces[first]), b = edge(mesh_.faces[second]);
    // The body lies on either side of its two ends, so they are travelled in opposite senses.
    for (unsigned i = 0; i < 3; ++i)
      owner[b[i]] = a[2 - i];
  }
  dof_.assign(2 * nodes_.size(), -1);
  for (std::size_t i = 0; i < dof_.size(); ++i)
    if (!fixed[i] && owner[i / 2] == i / 2)
      dof_[i] = n_unknowns_++;
  for (std::size_t i = 0; i < dof_.size(); ++i)
    if (!fixed[i])
      dof_[i] = dof_[2 * owner[i / 2] + i % 2];
  make_pattern();
}

void Discretisation::number_nodes()
{
  using namespace dealii;
  std::vector<dealii::Point<2>> vertices;
  for (const auto &v : mesh_.vertices)
    vertices.emplace_back(v[0], v[1]);
  std::vector<CellData<2>> cell_data(mesh_.cells.size());
  for (std::size_t i = 0; i < cell_data.size(); ++i)
  {
    std::copy(mesh_.cells[i].vertices.begin(), mesh_.cells[i].vertices.end(), cell_data[i].vertices.begin());
    cell_data[i].material_id = mesh_.cells[i].part;
  }
  Triangulation<2> triangulation;
  triangulation.create_triangulation(vertices, cell_data, SubCellData());
  const FE_Q<2> element(2);
  DoFHandler<2> handler(triangulation);
  handler.distribute_dofs(element);

  const auto lexicographic = FETools::lexicographic_to_hierarchic_numbering<2>(2);
  nodes_.resize(handler.n_dofs());
  cells_.resize(mesh_.cells.size());
  std::vector<types::global_dof_index> indices(9);
  std::size_t                          number = 0;
  for (const auto &cell : handler.active_cell_iterators())
  {
    cell->get_dof_indices(indices);
    const auto &corner = mesh_.cells[number].vertices;
    for (unsigned a = 0; a < 9; ++a)
    {
      const unsigned node = indices[lexicographic[a]];
      cells_[number][a] = node;
      const double s = 0.5 * (a % 3), t = 0.5 * (a / 3);
      for (unsigned c = 0; c < 2; ++c)
        nodes_[node][c] = (1 - s) * (1 - t) * mesh_.vertices[corner[0]][c] +
                          s * (1 - t) * mesh_.vertices[corner[1]][c] +
                          (1 - s) * t * mesh_.vertices[corner[2]][c] + s * t * mesh_.vertices[corner[3]][c];
    }
    ++number;
  }
}

void Discretisation::move_nodes(const std::vector<Point> &displacement)
{
  for (std::size_t i = 0; i < nodes_.size(); ++i)
    for (unsigned c = 0; c < 2; ++c)
      nodes_[i][c] += displacement[i][c];
}

double Discretisation::around(double radius) const
{
  switch (section_)
  {
  case MeshSection::axisymmetric:
    return 2 * std::numbers::pi * radius;
  case MeshSection::plane_strain:
    return 2.0;
  case MeshSection::whole_plane:
    break;
  }
  return 1.0;
}

EdgeNumbers Discretisation::edge(const geometry::BoundaryFace &face) const
{
  static constexpr unsigned local[4][3] = {{0, 3, 6}, {2, 5, 8}, {0, 1, 2}, {6, 7, 8}};
  const auto               &cell = cells_[face.cell];
  EdgeNumbers nodes{cell[local[face.face][0]], cell[local[face.face][1]], cell[local[face.face][2]]};
  // Local edges run from the first of their two corners; the face may run the other way.
  static constexpr unsigned first_corner[4] = {0, 1, 0, 2};
  const auto               &plug_cell = mesh_.cells[face.cell];
  if (geometry::face_vertices(plug_cell, face.face)[0] != plug_cell.vertices[first_corner[face.face]])
    std::swap(nodes[0], nodes[2]);
  return nodes;
}

void Discretisation::make_pattern()
{
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(cells_.size() * 171);
  const auto couple = [&](std::span<const unsigned> nodes) {
    for (unsigned i = 0; i < 2 * nodes.size(); ++i)
      for (unsigned j = 0; j <= i; ++j)
      {
        const int a = dof(nodes[i / 2], i % 2), b = dof(nodes[j / 2], j % 2);
        if (a >= 0 && b >= 0)
          entries.emplace_back(std::max(a, b), std::min(a, b), 0.0);
      }
  };
  for (const auto &cell : cells_)
    couple(cell);
  // Fibres join facing edges of a chamber, which no element does.
  for (const auto &chamber : mesh_.chambers)
    for (const auto &[lower, upper] : chamber.facing)
    {
      const auto                    below = edge(mesh_.faces[lower]), above = edge(mesh_.faces[upper]);
      const std::array<unsigned, 6> nodes{below[0], below[1], below[2], above[0], above[1], above[2]};
      couple(nodes);
    }
  pattern_.resize(n_unknowns_, n_unknowns_);
  pattern_.setFromTriplets(entries.begin(), entries.end());
  pattern_.makeCompressed();
}

int Discretisation::slot(int row, int column) const
{
  const int *first = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column];
  const int *last = pattern_.innerIndexPtr() + pattern_.outerIndexPtr()[column + 1];
  return static_cast<int>(std::lower_bound(first, last, row) - pattern_.innerIndexPtr());
}

void Discretisation::place(ElementBatch &batch, unsigned lane, std::size_t cell) const
{
  const int  dummy = pattern_.nonZeros();
  const auto find = [&](int a, int b) {
    if (a < 0 || b < 0)
      return dummy;
    return slot(std::max(a, b), std::min(a, b));
  };
  batch.cell[lane] = cell;
  const auto &nodes = cells_[cell];
  for (unsigned i = 0; i < n_element_dofs; ++i)
    batch.dof[lane][i] = dof(nodes[i / 2], i % 2);
  unsigned entry = 0;
  for (unsigned a = 0; a < n_element_nodes; ++a)
    for (unsigned b = 0; b <= a; ++b)
      for (unsigned i = 0; i < 2; ++i)
        for (unsigned j = 0; j < 2; ++j, ++entry)
          batch.slot[lane][entry] =
            a == b && i < j ? dummy : find(batch.dof[lane][2 * a + i], batch.dof[lane][2 * b + j]);
}

ElementGroup Discretisation::group(int part, unsigned n_branches, const std::vector<Point> &positions,
                                   const std::vector<Point> &offset) const
{
  ElementGroup             group{mesh_.part_names[part], {}, std::vector<double>(n_branches, 1.0)};
  std::vector<std::size_t> members;
  for (std::size_t i = 0; i < cells_.size(); ++i)
    if (mesh_.cells[i].part == part)
      members.push_back(i);

  for (std::size_t first = 0; first < members.size(); first += n_lanes)
  {
    auto &batch = group.batches.emplace_back();
    batch.n_elements = std::min<std::size_t>(n_lanes, members.size() - first);
    batch.elastic.assign(n_points * n_branches, {});
    batch.base.assign(n_points * n_branches, {});
    for (unsigned lane = 0; lane < n_lanes; ++lane)
    {
      const bool  real = lane < batch.n_elements;
      const auto  cell = members[first + (real ? lane : batch.n_elements - 1)];
      const auto &nodes = cells_[cell];
      place(batch, lane, cell);
      Eigen::Matrix3d moment = Eigen::Matrix3d::Zero();
      for (unsigned q = 0; q < n_points; ++q)
      {
        const double s = gauss_abscissae[q % 3], t = gauss_abscissae[q / 3];
        double       jacobian[2][2] = {}, radius = 0, slopes[9][2];
        for (unsigned a = 0; a < n_element_nodes; ++a)
        {
          slopes[a][0] = shape_slope(a % 3, s) * quadratic_shape(a / 3, t);
          slopes[a][1] = quadratic_shape(a % 3, s) * shape_slope(a / 3, t);
          const auto &x = positions[nodes[a]];
          for (unsigned i = 0; i < 2; ++i)
            for (unsigned j = 0; j < 2; ++j)
              jacobian[i][j] += x[i] * slopes[a][j];
          radius += x[0] * point_shape(q, a);
        }
        const double det = jacobian[0][0] * jacobian[1][1] - jacobian[0][1] * jacobian[1][0];
        for (unsigned a = 0; a < n_element_nodes; ++a)
        {
          batch.gradient[q][a][0][lane] =
            (slopes[a][0] * jacobian[1][1] - slopes[a][1] * jacobian[1][0]) / det;
          batch.gradient[q][a][1][lane] =
            (slopes[a][1] * jacobian[0][0] - slopes[a][0] * jacobian[0][1]) / det;
        }
        const bool   round = section_ == MeshSection::axisymmetric;
        const double weight = det * gauss_weights[q % 3] * gauss_weights[q / 3] * around(radius);
        batch.inverse_radius[q][lane] = round ? 1 / radius : 0.0;
        batch.weight[q][lane] = real ? weight : 0.0;
        for (unsigned m = 0; m < 3; ++m)
          for (unsigned n = 0; n < 3; ++n)
            moment(m, n) += weight * pressure_shape(q, m) * pressure_shape(q, n);
      }
      const Eigen::Matrix3d inverse = moment.inverse();
      for (unsigned i = 0; i < 9; ++i)
        batch.projection[i][lane] = inverse(i / 3, i % 3);
      if (!offset.empty())
        for (unsigned i = 0; i < n_element_dofs; ++i)
          batch.offset[i][lane] = offset[nodes[i / 2]][i % 2];
    }
  }
  return group;
}

void Discretisation::add_mass(const ElementGroup &group, double density, double *values) const
{
  for (const auto &batch : group.batches)
    for (unsigned lane = 0; lane < batch.n_elements; ++lane)
    {
      unsigned entry = 0;
      for (unsigned a = 0; a < n_element_nodes; ++a)
        for (unsigned b = 0; b <= a; ++b, entry += 4)
        {
          double mass = 0;
          for (unsigned q = 0; q < n_points; ++q)
            mass += density * batch.weight[q][lane] * point_shape(q, a) * point_shape(q, b);
          values[batch.slot[lane][entry]] += mass;
          values[batch.slot[lane][entry + 3]] += mass;
        }
    }
}
} // namespace solemech::solver
