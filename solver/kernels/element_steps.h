// SPDX-License-Identifier: Apache-2.0
// What every element loop does at an integration point: displacements of the nodes, displacement gradient,
// current gradients of the shape functions, force w tau : grad_x N and stiffness w (B^T a B + grad_x N . tau
// . grad_x N). In plane strain the hoop terms vanish because 1/R is stored as zero.
#pragma once

#include "solver/kernels/element_group.h"
#include "solver/kernels/part_laws.h"
#include "solver/kernels/spectral_frame.h"

namespace solemech::solver
{
/// Four elements side by side; `Number` carries the instruction set, so that no two translation units share
/// code.
template <typename Number>
struct ElementSteps
{
  using Nodal = std::array<Number, n_element_dofs>;

  static Number                load(const Lanes &lanes) { return Number::load(lanes.data()); }
  static SectionTensor<Number> load(const std::array<Lanes, 4> &t)
  {
    return {load(t[0]), load(t[1]), load(t[2]), load(t[3])};
  }

  static Nodal gather(const ElementBatch &batch, const double *x)
  {
    Nodal u;
    for (unsigned i = 0; i < n_element_dofs; ++i)
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

  static SectionMotion<Number> motion(const ElementBatch &batch, const Nodal &u, unsigned q)
  {
    SectionMotion<Number> h{};
    Number                radial(0.0);
    for (unsigned a = 0; a < n_element_nodes; ++a)
    {
      const Number gr = load(batch.gradient[q][a][0]), gz = load(batch.gradient[q][a][1]);
      h.rr += gr * u[2 * a], h.rz += gz * u[2 * a];
      h.zr += gr * u[2 * a + 1], h.zz += gz * u[2 * a + 1];
      radial += point_shape(q, a) * u[2 * a];
    }
    h.tt = radial * load(batch.inverse_radius[q]);
    return h;
  }

  /// Current gradients of the shape functions, and N/r.
  struct Shapes
  {
    std::array<std::array<Number, 3>, n_element_nodes> g; ///< dN/dr, dN/dz, N/r
  };

  static Shapes current_shapes(const ElementBatch &batch, const SectionMotion<Number> &here, unsigned q)
  {
    const auto   back = here.inverse();
    const Number hoop = (1.0 + back.tt) * load(batch.inverse_radius[q]);
    Shapes       shapes;
    for (unsigned a = 0; a < n_element_nodes; ++a)
    {
      const Number gr = load(batch.gradient[q][a][0]), gz = load(batch.gradient[q][a][1]);
      shapes.g[a] = {gr + gr * back.rr + gz * back.zr, gz + gr * back.rz + gz * back.zz,
                     point_shape(q, a) * hoop};
    }
    return shapes;
  }

  static void add_force(const SectionTensor<Number> &stress, const Shapes &shapes, const Number &weight,
                        Nodal &f)
  {
    const Number rr = weight * stress[0], zz = weight * stress[1], tt = weight * stress[2],
                 rz = weight * stress[3];
    for (unsigned a = 0; a < n_element_nodes; ++a)
    {
      const auto &g = shapes.g[a];
      f[2 * a] += rr * g[0] + rz * g[1] + tt * g[2];
      f[2 * a + 1] += rz * g[0] + zz * g[1];
    }
  }

  static void add_stiffness(const PointResponse<Number> &point, const Shapes &shapes, const Number &weight,
                            std::array<Number, n_element_entries> &k)
  {
    std::array<Number, 10> d;
    for (unsigned i = 0; i < 10; ++i)
      d[i] = weight * point.tangent[i];
    const Number rr = weight * point.stress[0], zz = weight * point.stress[1], tt = weight * point.stress[2],
                 rz = weight * point.stress[3];
    unsigned                                           entry = 0;
    std::array<std::array<Number, 3>, n_element_nodes> shear; // (tau . g_b)_r, (tau . g_b)_z, tau_tt h_b
    std::array<std::array<Number, 4>, n_element_nodes> radial, vertical;
    for (unsigned b = 0; b < n_element_nodes; ++b)
    {
      const auto &g = shapes.g[b];
      shear[b] = {rr * g[0] + rz * g[1], rz * g[0] + zz * g[1], tt * g[2]};
      radial[b] = {d[0] * g[0] + d[5] * g[2] + d[7] * g[1], d[4] * g[0] + d[6] * g[2] + d[8] * g[1],
                   d[5] * g[0] + d[2] * g[2] + d[9] * g[1], d[7] * g[0] + d[9] * g[2] + d[3] * g[1]};
      vertical[b] = {d[4] * g[1] + d[7] * g[0], d[1] * g[1] + d[8] * g[0], d[6] * g[1] + d[9] * g[0],
                     d[8] * g[1] + d[3] * g[0]};
    }
    for (unsigned a = 0; a < n_element_nodes; ++a)
    {
      const Number gr = shapes.g[a][0], gz = shapes.g[a][1], h = shapes.g[a][2];
      for (unsigned b = 0; b <= a; ++b, entry += 4)
      {
        const Number geometric = gr * shear[b][0] + gz * shear[b][1];
        k[entry] += gr * radial[b][0] + h * radial[b][2] + gz * radial[b][3] + geometric + h * shear[b][2];
        k[entry + 1] += gr * vertical[b][0] + h * vertical[b][2] + gz * vertical[b][3];
        k[entry + 2] += gz * radial[b][1] + gr * radial[b][3];
        k[entry + 3] += gz * vertical[b][1] + gr * vertical[b][3] + geometric;
      }
    }
  }
};
} // namespace solemech::solver
