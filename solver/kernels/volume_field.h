// SPDX-License-Identifier: Apache-2.0
// Volume part of nearly incompressible parts: through the mean of J that a discontinuous linear field sees
// (three-field form of Simo, Taylor and Pister, CMAME 51, 1985; dilatation and pressure condensed in the
// element).
#pragma once

#include "materials/volumetric.h"
#include "solver/kernels/element_steps.h"

namespace solemech::solver
{
template <typename Number, int dim>
struct VolumeField : ElementSteps<Number, dim>
{
  using Steps = ElementSteps<Number, dim>;
  using Steps::load, Steps::motion, Steps::n_points, Steps::n_nodes, Steps::n_dofs, Steps::n_modes;
  using typename Steps::Batch, typename Steps::Nodal, typename Steps::Stiffness;
  using Modes = std::array<Number, n_modes>;
  using ModeMatrix = std::array<Modes, n_modes>;

  struct VolumeState
  {
    std::array<Number, n_points> dilatation{}; ///< Theta [-]
    std::array<Number, n_points> pressure{};   ///< p, positive in tension [Pa]
    ModeMatrix                   modulus{};    ///< M^-1 D M^-1 of the condensed element
    bool                         admissible = true;
  };

  static Modes project(const Batch &batch, const Modes &v)
  {
    Modes out;
    for (unsigned i = 0; i < n_modes; ++i)
    {
      out[i] = load(batch.projection[n_modes * i]) * v[0];
      for (unsigned j = 1; j < n_modes; ++j)
        out[i] += load(batch.projection[n_modes * i + j]) * v[j];
    }
    return out;
  }

  /// The transpose of M^-1 D: taken twice, M^-1 D M^-1, since M and D are symmetric.
  static ModeMatrix projected(const Batch &batch, const ModeMatrix &d)
  {
    ModeMatrix out;
    for (unsigned n = 0; n < n_modes; ++n)
    {
      Modes column;
      for (unsigned m = 0; m < n_modes; ++m)
        column[m] = d[m][n];
      column = project(batch, column);
      for (unsigned m = 0; m < n_modes; ++m)
        out[n][m] = column[m];
    }
    return out;
  }

  static VolumeState volume_state(const materials::Volumetric &volumetric, const Batch &batch, const Nodal &u)
  {
    VolumeState state;
    Modes       moment{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      const Number wj = load(batch.weight[q]) * (motion(batch, u, q).volume_ratio() - 1.0);
      for (unsigned m = 0; m < n_modes; ++m)
        moment[m] += pressure_shape(q, m) * wj;
    }
    const auto theta = project(batch, moment);
    Modes      load_moment{};
    ModeMatrix d{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      Number t(1.0);
      for (unsigned m = 0; m < n_modes; ++m)
        t += pressure_shape(q, m) * theta[m];
      if (any(t < Number(0.2)))
      {
        state.admissible = false;
        return state;
      }
      state.dilatation[q] = t;
      const Number weight = load(batch.weight[q]);
      const Number p = volumetric.pressure(t) * weight, slope = volumetric.modulus(t) * weight;
      for (unsigned m = 0; m < n_modes; ++m)
      {
        load_moment[m] += pressure_shape(q, m) * p;
        for (unsigned n = 0; n < n_modes; ++n)
          d[m][n] += pressure_shape(q, m) * pressure_shape(q, n) * slope;
      }
    }
    const auto p = project(batch, load_moment);
    for (unsigned q = 0; q < n_points; ++q)
      for (unsigned m = 0; m < n_modes; ++m)
        state.pressure[q] += pressure_shape(q, m) * p[m];
    state.modulus = projected(batch, projected(batch, d));
    return state;
  }

  static Number volume_energy(const materials::Volumetric &volumetric, const Batch &batch, const Nodal &u)
  {
    const auto state = volume_state(volumetric, batch, u);
    Number     sum(0.0);
    for (unsigned q = 0; q < n_points; ++q)
      sum += load(batch.weight[q]) * volumetric.energy(state.dilatation[q]);
    return sum;
  }

  static void add_volume_stiffness(const VolumeState &state, const std::array<Nodal, n_modes> &b,
                                   Stiffness &k)
  {
    std::array<Nodal, n_modes> cb{};
    for (unsigned m = 0; m < n_modes; ++m)
      for (unsigned n = 0; n < n_modes; ++n)
        for (unsigned i = 0; i < n_dofs; ++i)
          cb[m][i] += state.modulus[m][n] * b[n][i];
    unsigned entry = 0;
    for (unsigned a = 0; a < n_nodes; ++a)
      for (unsigned c = 0; c <= a; ++c)
        for (unsigned i = 0; i < dim; ++i)
          for (unsigned l = 0; l < dim; ++l, ++entry)
            for (unsigned m = 0; m < n_modes; ++m)
              k[entry] += b[m][dim * a + i] * cb[m][dim * c + l];
  }
};
} // namespace solemech::solver
