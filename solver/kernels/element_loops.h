// SPDX-License-Identifier: Apache-2.0
// The element loops, templated on the instruction set and the law. Weak form in the reference: force
// w tau : grad_x N, stiffness w (B^T a B + grad_x N . tau . grad_x N); in plane strain the hoop terms vanish
// because 1/R is stored as zero. Rubber adds its volume part through the mean of J that a discontinuous linear
// field sees (three-field form of Simo, Taylor and Pister, CMAME 51, 1985; dilatation and pressure condensed).
#pragma once

#include "solver/kernels/part_laws.h"
#include "solver/kernels/solid_kernel.h"
#include "solver/kernels/spectral_frame.h"

namespace solemech::solver
{
template <typename Isa, typename Law>
class ElementLoops : public SolidKernel
{
  using Number = Pack<Isa>;
  using Nodal = std::array<Number, n_element_dofs>;

public:
  explicit ElementLoops(Law law) : law_(std::move(law)) {}

  unsigned n_branches() const override { return law_.branches().size(); }

  void begin_step(ElementGroup &group, const double *x, double dt) const override
  {
    const auto &branches = law_.branches();
    group.remaining.resize(branches.size());
    for (unsigned i = 0; i < branches.size(); ++i)
      group.remaining[i] = branches[i].decay(0.5 * dt);
    if (branches.empty())
      return;
    for (auto &batch : group.batches)
    {
      const Nodal u = gather(batch, x);
      for (unsigned q = 0; q < n_points; ++q)
      {
        const auto back = motion(batch, u, q).inverse();
        for (unsigned i = 0; i < branches.size(); ++i)
        {
          const auto frame = SpectralFrame<Number>::of_strain(load(batch.elastic[index(q, i)]));
          const double twice = 2 * group.remaining[i];
          const auto elastic = frame.tensor({expm1(twice * frame.strains[0]), expm1(twice * frame.strains[1]),
                                             expm1(twice * frame.strains[2])}); // b_e - I
          // F^-1 b_e F^-T - I = (F^-1 F^-T - I) + F^-1 (b_e - I) F^-T
          const auto excess = back.left_excess(), pulled = back.push_forward(elastic);
          for (unsigned k = 0; k < 4; ++k)
            (excess[k] + pulled[k]).store(batch.base[index(q, i)][k].data());
        }
      }
    }
  }

  bool assemble(const ElementGroup &group, const double *x, double *force, double *matrix) const override
  {
    alignas(32) std::array<double, n_element_entries * n_lanes> packed;
    for (const auto &batch : group.batches)
    {
      Nodal                                 f{};
      std::array<Number, n_element_entries> k{};
      if (!element(group, batch, gather(batch, x), f, matrix ? &k : nullptr))
        return false;
      for (unsigned lane = 0; lane < batch.n_elements; ++lane)
        for (unsigned i = 0; i < n_element_dofs; ++i)
          if (const int dof = batch.dof[lane][i]; dof >= 0)
            force[dof] += f[i][lane];
      if (!matrix)
        continue;
      for (unsigned i = 0; i < n_element_entries; ++i)
        k[i].store(&packed[i * n_lanes]);
      for (unsigned lane = 0; lane < batch.n_elements; ++lane)
      {
        const auto &slot = batch.slot[lane];
        for (unsigned i = 0; i < n_element_entries; ++i)
          matrix[slot[i]] += packed[i * n_lanes + lane];
      }
    }
    return true;
  }

  PartEnergies accept(ElementGroup &group, const double *x) const override
  {
    const auto &branches = law_.branches();
    std::array<Number, 8> sums{};
    for (auto &batch : group.batches)
    {
      const Nodal u = gather(batch, x);
      if constexpr (Law::mixed)
        sums[0] += volume_energy(batch, u);
      for (unsigned q = 0; q < n_points; ++q)
      {
        const Number weight = load(batch.weight[q]);
        const auto   here = motion(batch, u, q);
        const auto   stored = law_.energies(SpectralFrame<Number>::of_excess(here.left_excess()).strains);
        for (unsigned k = 0; k < 3; ++k)
          sums[k] += weight * stored[k];
        Number lost(0.0);
        for (unsigned i = 0; i < branches.size(); ++i)
        {
          const auto  &branch = branches[i];
          const double remaining = group.remaining[i];
          auto        &elastic = batch.elastic[index(q, i)];
          const Number first_loss =
            branch.lost(branch.stored(SpectralFrame<Number>::of_strain(load(elastic)).strains), remaining);
          const auto frame = SpectralFrame<Number>::of_excess(trial(batch, here, q, i));
          const auto step = branch.push(frame.strains, remaining);
          const auto strain = frame.tensor({step.strain_factor * frame.strains[0],
                                            step.strain_factor * frame.strains[1],
                                            step.strain_factor * frame.strains[2]});
          for (unsigned k = 0; k < 4; ++k)
            strain[k].store(elastic[k].data());
          const Number decay_loss = first_loss + step.lost_in_decay;
          sums[branch.slips() ? 4 : 3] += weight * step.stored;
          sums[branch.slips() ? 7 : 5] += weight * decay_loss;
          sums[6] += weight * step.lost_in_slip;
          lost += decay_loss + step.lost_in_slip;
        }
        (load(batch.dissipated[q]) + lost).store(batch.dissipated[q].data());
      }
    }
    const auto total = [](const Number &pack) { return pack[0] + pack[1] + pack[2] + pack[3]; };
    return {total(sums[0]), total(sums[1]), total(sums[2]), total(sums[3]),
            total(sums[4]), total(sums[5]), total(sums[6]), total(sums[7])};
  }

  std::vector<ElementFields> fields(const ElementGroup &group, const double *x) const override
  {
    std::vector<ElementFields> all;
    for (const auto &batch : group.batches)
    {
      const Nodal                u = gather(batch, x);
      std::array<Number, n_points> pressure{};
      if constexpr (Law::mixed)
        pressure = volume_state(batch, u).pressure;
      std::array<ElementFields, n_lanes> out;
      for (unsigned q = 0; q < n_points; ++q)
      {
        const auto            here = motion(batch, u, q);
        PointResponse<Number> point;
        const auto            frame = SpectralFrame<Number>::of_excess(here.left_excess());
        frame.add(law_.response(frame.strains), point);
        const auto stored = law_.energies(frame.strains);
        Number     energy = stored[0] + stored[1] + stored[2];
        // The accepted elastic strains are the state at the end of the step.
        for (unsigned i = 0; i < law_.branches().size(); ++i)
        {
          const auto branch_frame =
            SpectralFrame<Number>::of_strain(load(batch.elastic[index(q, i)]));
          const auto rest = law_.branches()[i];
          energy += rest.stored(branch_frame.strains);
          branch_frame.add(materials::Hencky{rest.shear_modulus, rest.bulk_modulus}.response(branch_frame.strains),
                           point);
        }
        const Number j = here.volume_ratio();
        for (unsigned lane = 0; lane < batch.n_elements; ++lane)
        {
          const double cauchy = 1 / j[lane], p = pressure[q][lane];
          out[lane][q] = {point.stress[1][lane] * cauchy + p,
                          point.stress[0][lane] * cauchy + p,
                          point.stress[2][lane] * cauchy + p,
                          point.stress[3][lane] * cauchy,
                          1 + here.zz[lane],
                          j[lane],
                          energy[lane],
                          batch.dissipated[q][lane]};
        }
      }
      all.insert(all.end(), out.begin(), out.begin() + batch.n_elements);
    }
    return all;
  }

private:
  Law law_;

  std::size_t index(unsigned q, unsigned branch) const { return q * law_.branches().size() + branch; }

  static Number load(const Lanes &lanes) { return Number::load(lanes.data()); }
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

  SectionTensor<Number> trial(const ElementBatch &batch, const SectionMotion<Number> &here, unsigned q,
                              unsigned branch) const
  {
    const auto excess = here.left_excess(), pushed = here.push_forward(load(batch.base[index(q, branch)]));
    return {excess[0] + pushed[0], excess[1] + pushed[1], excess[2] + pushed[2], excess[3] + pushed[3]};
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

  static void add_force(const SectionTensor<Number> &stress, const Shapes &shapes, const Number &weight, Nodal &f)
  {
    const Number rr = weight * stress[0], zz = weight * stress[1], tt = weight * stress[2], rz = weight * stress[3];
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
    unsigned entry = 0;
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

  bool element(const ElementGroup &group, const ElementBatch &batch, const Nodal &u, Nodal &f,
               std::array<Number, n_element_entries> *k) const
  {
    [[maybe_unused]] VolumeState volume;
    if constexpr (Law::mixed)
    {
      volume = volume_state(batch, u);
      if (!volume.admissible)
        return false;
    }
    [[maybe_unused]] std::array<Nodal, 3> constraint{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      const auto   here = motion(batch, u, q);
      const Number j = here.volume_ratio();
      if (any(j < law_.smallest_volume_ratio()) || any(1.0 + here.tt < Number(1e-3)))
        return false;
      PointResponse<Number> point;
      const auto            frame = SpectralFrame<Number>::of_excess(here.left_excess());
      frame.add(law_.response(frame.strains), point);
      for (unsigned i = 0; i < law_.branches().size(); ++i)
      {
        const auto own = SpectralFrame<Number>::of_excess(trial(batch, here, q, i));
        own.add(law_.branches()[i].push(own.strains, group.remaining[i]).response, point);
      }
      const auto   shapes = current_shapes(batch, here, q);
      const Number weight = load(batch.weight[q]);
      if constexpr (Law::mixed)
      {
        // A fixed pressure p carries the stress p J I; its principal moduli are all p J.
        const Number pj = volume.pressure[q] * j;
        SpectralFrame<Number> any_frame{{Number(0.0), Number(0.0), Number(0.0)}, Number(1.0), Number(0.0), Number(0.0)};
        any_frame.add({Number(0.0), {pj, pj, pj}, {pj, pj, pj, pj, pj, pj}}, point);
        if (k)
          for (unsigned a = 0; a < n_element_nodes; ++a)
            for (unsigned m = 0; m < 3; ++m)
            {
              const Number phi = weight * j * pressure_shape(q, m);
              constraint[m][2 * a] += phi * (shapes.g[a][0] + shapes.g[a][2]);
              constraint[m][2 * a + 1] += phi * shapes.g[a][1];
            }
      }
      add_force(point.stress, shapes, weight, f);
      if (k)
        add_stiffness(point, shapes, weight, *k);
    }
    if constexpr (Law::mixed)
      if (k)
        add_volume_stiffness(volume, constraint, *k);
    return true;
  }

  // ---- volume part of nearly incompressible parts -------------------------------------------------------
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

  VolumeState volume_state(const ElementBatch &batch, const Nodal &u) const
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
      const Number p = law_.volumetric().pressure(t) * weight, slope = law_.volumetric().modulus(t) * weight;
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

  Number volume_energy(const ElementBatch &batch, const Nodal &u) const
  {
    const auto state = volume_state(batch, u);
    Number     sum(0.0);
    for (unsigned q = 0; q < n_points; ++q)
      sum += load(batch.weight[q]) * law_.volumetric().energy(state.dilatation[q]);
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
