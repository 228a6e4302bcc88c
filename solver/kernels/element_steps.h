// SPDX-License-Identifier: Apache-2.0
// What every element loop does at an integration point: displacements of the nodes, displacement gradient,
// current gradients of the shape functions, force w tau : grad_x N and stiffness w (B^T a B + grad_x N . tau
// . grad_x N). What differs between a section and a solid stands in their kinematics.
#pragma once

#include "solver/kernels/element_group.h"
#include "solver/kernels/section_kinematics.h"
#include "solver/kernels/solid_kinematics.h"

#include <type_traits>

namespace solemech::solver
{
/// Four elements side by side; `Number` carries the instruction set, so that no two translation units share
/// code.
template <typename Number, int dim>
struct ElementSteps : QuadraticElement<dim>
{
  using Element = QuadraticElement<dim>;
  using Element::n_nodes, Element::n_points, Element::n_dofs, Element::n_entries;
  using Kinematics = std::conditional_t<dim == 2, SectionKinematics<Number>, SolidKinematics<Number>>;
  using Tensor = typename Kinematics::Tensor;
  using Motion = typename Kinematics::Motion;
  using Response = typename Kinematics::Response;
  using Frame = typename Kinematics::Frame;
  using Batch = ElementBatch<dim>;
  using Nodal = std::array<Number, n_dofs>;
  using Shapes = std::array<typename Kinematics::Gradient, n_nodes>; ///< current gradients
  using Stiffness = std::array<Number, n_entries>;

  static Number load(const Lanes &lanes) { return Number::load(lanes.data()); }

  template <std::size_t n>
  static std::array<Number, n> load(const std::array<Lanes, n> &lanes)
  {
    std::array<Number, n> out;
    for (unsigned k = 0; k < n; ++k)
      out[k] = load(lanes[k]);
    return out;
  }

  static Nodal gather(const Batch &batch, const double *x)
  {
    Nodal u;
    for (unsigned i = 0; i < n_dofs; ++i)
    {
      u[i] = load(batch.offset[i]);
      for (unsigned lane = 0; lane < batch.n_elements; ++lane)
        if (const int dof = batch.dof[lane][i]; dof >= 0)
          u[i].lanes[lane] += x[dof];
      for (unsigned lane = batch.n_elements; lane < n_lanes; ++lane)
        u[i].lanes[lane] = u[i].lanes[batch.n_elements - 1];
    }
    return u;
  }

  static Motion motion(const Batch &batch, const Nodal &u, unsigned q)
  {
    Motion h{};
    for (unsigned a = 0; a < n_nodes; ++a)
      h.add(load(batch.gradient[q][a]), point_shape<dim>(q, a), &u[dim * a]);
    if constexpr (dim == 2)
      h.tt = h.tt * load(batch.inverse_radius[q]);
    return h;
  }

  static Shapes current_shapes(const Batch &batch, const Motion &here, unsigned q)
  {
    const auto back = here.inverse();
    Number     hoop(0.0); // 1/r
    if constexpr (dim == 2)
      hoop = (1.0 + back.tt) * load(batch.inverse_radius[q]);
    Shapes shapes;
    for (unsigned a = 0; a < n_nodes; ++a)
      shapes[a] = Kinematics::current(back, load(batch.gradient[q][a]), point_shape<dim>(q, a) * hoop);
    return shapes;
  }

  static void add_force(const Tensor &weighted_stress, const Shapes &shapes, Nodal &f)
  {
    for (unsigned a = 0; a < n_nodes; ++a)
      Kinematics::add_force(weighted_stress, shapes[a], &f[dim * a]);
  }

  static void add_stiffness(const Response &weighted, const Shapes &shapes, Stiffness &k)
  {
    std::array<typename Kinematics::Column, n_nodes> columns;
    for (unsigned b = 0; b < n_nodes; ++b)
      columns[b] = Kinematics::column(weighted, shapes[b]);
    unsigned entry = 0;
    for (unsigned a = 0; a < n_nodes; ++a)
      for (unsigned b = 0; b <= a; ++b, entry += dim * dim)
        Kinematics::add_block(shapes[a], columns[b], &k[entry]);
  }
};
} // namespace solemech::solver
