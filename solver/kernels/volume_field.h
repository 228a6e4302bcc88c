// SPDX-License-Identifier: Apache-2.0
// Volume part of nearly incompressible parts: through the mean of J that a discontinuous linear field sees
// (three-field form of Simo, Taylor and Pister, CMAME 51, 1985; dilatation and pressure condensed in the
// element).
#pragma once

#include "solver/kernels/element_steps.h"

namespace solemech::solver
{
template <typename Number>
struct VolumeField : ElementSteps<Number>
{
  using Steps = ElementSteps<Number>;
  using Steps::load, Steps::motion;
  using typename Steps::Nodal;

  struct VolumeState
  {
    std::array<Number, n_points> dilatation{}; ///< Theta [-]
    std::array<Number, n_points> pressure{};   ///< p, positive in tension [Pa]
    std::array<Number, 9>        modulus{};    ///< M^-1 D M^-1 of the condensed element
    bool                         admissible = true;
  };

  static std::array<Number, 3> project(const ElementBatch &batch, const std::array<Number, 3> &v)
  {
    std::array<Number, 3> out;
    for (unsigned i = 0; i < 3; ++i)
      out[i] = load(batch.projection[3 * i]) * v[0] + load(batch.projection[3 * i + 1]) * v[1] +
               load(batch.projection[3 * i + 2]) * v[2];
    return out;
  }

  static VolumeState volume_state(const materials::Volumetric &volumetric, const ElementBatch &batch,
                                  const Nodal &u)
  {
    VolumeState           state;
    std::array<Number, 3> moment{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      const Number wj = load(batch.weight[q]) * (motion(batch, u, q).volume_ratio() - 1.0);
      for (unsigned m = 0; m < 3; ++m)
        moment[m] += pressure_shape(q, m) * wj;
    }
    const auto            theta = project(batch, moment);
    std::array<Number, 3> load_moment{};
    std::array<Number, 9> d{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      Number t(1.0);
      for (unsigned m = 0; m < 3; ++m)
        t += pressure_shape(q, m) * theta[m];
      if (any(t < Number(0.2)))
      {
        state.admissible = false;
        return state;
      }
      state.dilatation[q] = t;
      const Number weight = load(batch.weight[q]);
      const Number p = volumetric.pressure(t) * weight, slope = volumetric.modulus(t) * weight;
      for (unsigned m = 0; m < 3; ++m)
      {
        load_moment[m] += pressure_shape(q, m) * p;
        for (unsigned n = 0; n < 3; ++n)
          d[3 * m + n] += pressure_shape(q, m) * pressure_shape(q, n) * slope;
      }
    }
    const auto p = project(batch, load_moment);
    for (unsigned q = 0; q < n_points; ++q)
      for (unsigned m = 0; m < 3; ++m)
        state.pressure[q] += pressure_shape(q, m) * p[m];
    std::array<Number, 9> half{}; // M^-1 D
    for (unsigned n = 0; n < 3; ++n)
    {
      const auto column = project(batch, {d[n], d[3 + n], d[6 + n]});
      for (unsigned m = 0; m < 3; ++m)
        half[3 * m + n] = column[m];
    }
    for (unsigned m = 0; m < 3; ++m)
    {
      const auto row = project(batch, {half[3 * m], half[3 * m + 1], half[3 * m + 2]});
      for (unsigned n = 0; n < 3; ++n)
        state.modulus[3 * m + n] = row[n];
    }
    return state;
  }

  static Number volume_energy(const materials::Volumetric &volumetric, const ElementBatch &batch,
                              const Nodal &u)
  {
    const auto state = volume_state(volumetric, batch, u);
    Number     sum(0.0);
    for (unsigned q = 0; q < n_points; ++q)
      sum += load(batch.weight[q]) * volumetric.energy(state.dilatation[q]);
    return sum;
  }

  static void add_volume_stiffness(const VolumeState &state, const std::array<Nodal, 3> &b,
                                   std::array<Number, n_element_entries> &k)
  {
    std::array<Nodal, 3> cb;
    for (unsigned m = 0; m < 3; ++m)
      for (unsigned i = 0; i < n_element_dofs; ++i)
        cb[m][i] = state.modulus[3 * m] * b[0][i] + state.modulus[3 * m + 1] * b[1][i] +
                   state.modulus[3 * m + 2] * b[2][i];
    unsigned entry = 0;
    for (unsigned a = 0; a < n_element_nodes; ++a)
      for (unsigned c = 0; c <= a; ++c)
        for (unsigned i = 0; i < 2; ++i)
          for (unsigned l = 0; l < 2; ++l, ++entry)
            for (unsigned m = 0; m < 3; ++m)
              k[entry] += b[m][2 * a + i] * cb[m][2 * c + l];
  }
};
} // namespace solemech::solver
