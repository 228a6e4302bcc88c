// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/quadratic_mesh.h"

#include <Eigen/Dense>
#include <deal.II/dofs/dof_handler.h>
#include <deal.II/fe/fe_q.h>
#include <deal.II/fe/fe_tools.h>
#include <deal.II/grid/tria.h>

#include <algorithm>
#include <span>

namespace solemech::solver
{
namespace
{
/// Multilinear shape function of a corner at a node.
template <int dim>
double corner_shape(unsigned corner, unsigned node)
{
  double shape = 1;
  for (unsigned d = 0; d < dim; ++d)
  {
    const double s = 0.5 * place_along(node, d);
    shape *= (corner >> d) % 2 ? s : 1 - s;
  }
  return shape;
}
} // namespace

template <int dim>
QuadraticMesh<dim>::QuadraticMesh(const std::vector<Point> &vertices, const std::vector<Corners> &cells,
                                  Depth depth)
  : depth_(depth), cells_(cells.size())
{
  using namespace dealii;
  std::vector<dealii::Point<dim>> places(vertices.size());
  for (std::size_t i = 0; i < vertices.size(); ++i)
    for (unsigned c = 0; c < dim; ++c)
      places[i][c] = vertices[i][c];
  std::vector<CellData<dim>> cell_data(cells.size());
  for (std::size_t i = 0; i < cells.size(); ++i)
    std::copy(cells[i].begin(), cells[i].end(), cell_data[i].vertices.begin());
  Triangulation<dim> triangulation;
  triangulation.create_triangulation(places, cell_data, SubCellData());
  const FE_Q<dim> element(2);
  DoFHandler<dim> handler(triangulation);
  handler.distribute_dofs(element);

  const auto lexicographic = FETools::lexicographic_to_hierarchic_numbering<dim>(2);
  nodes_.resize(handler.n_dofs());
  std::vector<types::global_dof_index> indices(Element::n_nodes);
  std::size_t                          number = 0;
  for (const auto &cell : handler.active_cell_iterators())
  {
    cell->get_dof_indices(indices);
    for (unsigned a = 0; a < Element::n_nodes; ++a)
    {
      const unsigned node = indices[lexicographic[a]];
      cells_[number][a] = node;
      for (unsigned c = 0; c < dim; ++c)
      {
        double place = 0;
        for (unsigned v = 0; v < cells[number].size(); ++v)
          place += corner_shape<dim>(v, a) * vertices[cells[number][v]][c];
        nodes_[node][c] = place;
      }
    }
    ++number;
  }
}

template <int dim>
void QuadraticMesh<dim>::number_unknowns(const std::vector<bool> &held, const std::vector<unsigned> &owner,
                                         const std::vector<std::vector<unsigned>> &coupled)
{
  dof_.assign(dim * nodes_.size(), -1);
  n_unknowns_ = 0;
  for (std::size_t i = 0; i < dof_.size(); ++i)
    if (!held[i] && owner[i / dim] == i / dim)
      dof_[i] = n_unknowns_++;
  for (std::size_t i = 0; i < dof_.size(); ++i)
    if (!held[i])
      dof_[i] = dof_[dim * owner[i / dim] + i % dim];
  make_pattern(coupled);
}

template <int dim>
void QuadraticMesh<dim>::move_nodes(const std::vector<Point> &displacement)
{
  for (std::size_t i = 0; i < nodes_.size(); ++i)
    for (unsigned c = 0; c < dim; ++c)
      nodes_[i][c] += displacement[i][c];
}

template <int dim>
void QuadraticMesh<dim>::make_pattern(const std::vector<std::vector<unsigned>> &coupled)
{
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(cells_.size() * Element::n_dofs * (Element::n_dofs + 1) / 2);
  const auto couple = [&](std::span<const unsigned> nodes) {
    for (unsigned i = 0; i < dim * nodes.size(); ++i)
      for (unsigned j = 0; j <= i; ++j)
      {
        const int a = dof(nodes[i / dim], i % dim), b = dof(nodes[j / dim], j % dim);
        if (a >= 0 && b >= 0)
          entries.emplace_back(std::max(a, b), std::min(a, b), 0.0);
      }
  };
  for (const auto &cell : cells_)
    couple(cell);
  for (const auto &nodes : coupled)
    couple(nodes);
  pattern_.resize(n_unknowns_, n_unknowns_);
  pattern_.setFromTriplets(entries.begin(), entries.end());
  pattern_.makeCompressed();
}

template <int dim>
void QuadraticMesh<dim>::place(ElementBatch<dim> &batch, unsigned lane, std::size_t cell) const
{
  const int  dummy = pattern_.nonZeros();
  const auto find = [&](int a, int b) {
    if (a < 0 || b < 0)
      return dummy;
    return slot(std::max(a, b), std::min(a, b));
  };
  batch.cell[lane] = cell;
  const auto &nodes = cells_[cell];
  auto       &dofs = batch.dof[lane];
  for (unsigned i = 0; i < Element::n_dofs; ++i)
    dofs[i] = dof(nodes[i / dim], i % dim);
  unsigned entry = 0;
  for (unsigned a = 0; a < Element::n_nodes; ++a)
    for (unsigned b = 0; b <= a; ++b)
      for (unsigned i = 0; i < dim; ++i)
        for (unsigned j = 0; j < dim; ++j, ++entry)
          batch.slot[lane][entry] = a == b && i < j ? dummy : find(dofs[dim * a + i], dofs[dim * b + j]);
}

/// Gradients, weights and the mass matrix of the pressure of the element in a lane.
template <int dim>
void QuadraticMesh<dim>::measure(ElementBatch<dim> &batch, unsigned lane,
                                 const std::vector<Point> &positions) const
{
  using Square = Eigen::Matrix<double, dim, dim>;
  const auto                                               &nodes = cells_[batch.cell[lane]];
  Eigen::Matrix<double, Element::n_modes, Element::n_modes> moment;
  moment.setZero();
  for (unsigned q = 0; q < Element::n_points; ++q)
  {
    Eigen::Matrix<double, dim, Element::n_nodes> place, slopes;
    double                                       radius = 0;
    for (unsigned a = 0; a < Element::n_nodes; ++a)
    {
      const auto &x = positions[nodes[a]];
      for (unsigned d = 0; d < dim; ++d)
        place(d, a) = x[d], slopes(d, a) = point_slope<dim>(q, a, d);
      radius += x[0] * point_shape<dim>(q, a);
    }
    const Square jacobian = place * slopes.transpose();
    const auto   gradient = (jacobian.inverse().transpose() * slopes).eval();
    for (unsigned a = 0; a < Element::n_nodes; ++a)
      for (unsigned d = 0; d < dim; ++d)
        batch.gradient[q][a][d][lane] = gradient(d, a);
    const double weight = jacobian.determinant() * point_weight<dim>(q) * around(radius);
    if constexpr (dim == 2)
      batch.inverse_radius[q][lane] = depth_.round ? 1 / radius : 0.0;
    batch.weight[q][lane] = lane < batch.n_elements ? weight : 0.0;
    for (unsigned m = 0; m < Element::n_modes; ++m)
      for (unsigned n = 0; n < Element::n_modes; ++n)
        moment(m, n) += weight * pressure_shape(q, m) * pressure_shape(q, n);
  }
  const auto inverse = moment.inverse().eval();
  for (unsigned i = 0; i < batch.projection.size(); ++i)
    batch.projection[i][lane] = inverse(i / Element::n_modes, i % Element::n_modes);
}

template <int dim>
ElementGroupOf<dim> QuadraticMesh<dim>::group(const std::string &part, const std::vector<std::size_t> &cells,
                                              unsigned n_branches, const std::vector<Point> &positions,
                                              const std::vector<Point> &offset) const
{
  ElementGroupOf<dim> group{part, {}, std::vector<double>(n_branches, 1.0)};
  group.batches.reserve((cells.size() + n_lanes - 1) / n_lanes);
  for (std::size_t first = 0; first < cells.size(); first += n_lanes)
  {
    auto &batch = group.batches.emplace_back();
    batch.n_elements = std::min<std::size_t>(n_lanes, cells.size() - first);
    batch.elastic.assign(Element::n_points * n_branches, {});
    batch.base.assign(Element::n_points * n_branches, {});
    for (unsigned lane = 0; lane < n_lanes; ++lane)
    {
      const auto cell = cells[first + std::min(lane, batch.n_elements - 1)];
      place(batch, lane, cell);
      measure(batch, lane, positions);
      if (!offset.empty())
        for (unsigned i = 0; i < Element::n_dofs; ++i)
          batch.offset[i][lane] = offset[cells_[cell][i / dim]][i % dim];
    }
  }
  return group;
}

template <int dim>
void QuadraticMesh<dim>::add_mass(const ElementGroupOf<dim> &group, double density, double *values) const
{
  for (const auto &batch : group.batches)
    for (unsigned lane = 0; lane < batch.n_elements; ++lane)
    {
      unsigned entry = 0;
      for (unsigned a = 0; a < Element::n_nodes; ++a)
        for (unsigned b = 0; b <= a; ++b, entry += dim * dim)
        {
          double mass = 0;
          for (unsigned q = 0; q < Element::n_points; ++q)
            mass += density * batch.weight[q][lane] * point_shape<dim>(q, a) * point_shape<dim>(q, b);
          for (unsigned c = 0; c < dim; ++c)
            values[batch.slot[lane][entry + (dim + 1) * c]] += mass;
        }
    }
}

template class QuadraticMesh<2>;
template class QuadraticMesh<3>;
} // namespace solemech::solver
