// SPDX-License-Identifier: Apache-2.0
// The element loops, templated on the instruction set, the dimension and the law: start of a step, force and
// stiffness, acceptance with energies, fields for pictures. The steps at a point stand in element_steps.h,
// the volume part of rubber in volume_field.h.
#pragma once

#include "solver/kernels/instantiations.h"
#include "solver/kernels/material_axes.h"
#include "solver/kernels/part_laws.h"
#include "solver/kernels/volume_field.h"

namespace solemech::solver
{
template <typename Isa, int dim, typename Law>
class ElementLoops : public SolidKernelOf<dim>, private VolumeField<Pack<Isa>, dim>
{
  using Number = Pack<Isa>;
  using Volume = VolumeField<Number, dim>;
  using typename Volume::Batch, typename Volume::Frame, typename Volume::Kinematics, typename Volume::Motion,
    typename Volume::Nodal, typename Volume::Response, typename Volume::Stiffness, typename Volume::Tensor;
  using typename Volume::VolumeState;
  using Volume::add_force, Volume::add_stiffness, Volume::current_shapes, Volume::gather, Volume::load,
    Volume::motion, Volume::n_points, Volume::n_nodes, Volume::n_dofs, Volume::n_entries, Volume::n_modes,
    Volume::n_components;
  using Volume::add_volume_stiffness, Volume::volume_energy, Volume::volume_state;
  using Group = ElementGroupOf<dim>;

public:
  explicit ElementLoops(Law law) : law_(std::move(law)) {}

  unsigned n_branches() const override { return law_.branches().size(); }

  void begin_step(Group &group, const double *x, double dt) const override
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
          const auto   frame = Frame::of_strain(load(batch.elastic[index(q, i)]));
          const double twice = 2 * group.remaining[i];
          const auto elastic = frame.tensor({expm1(twice * frame.strains[0]), expm1(twice * frame.strains[1]),
                                             expm1(twice * frame.strains[2])}); // b_e - I
          // F^-1 b_e F^-T - I = (F^-1 F^-T - I) + F^-1 (b_e - I) F^-T
          const auto excess = back.left_excess(), pulled = back.push_forward(elastic);
          for (unsigned k = 0; k < n_components; ++k)
            (excess[k] + pulled[k]).store(batch.base[index(q, i)][k].data());
        }
      }
    }
  }

  bool assemble(const Group &group, const double *x, double *force, double *matrix) const override
  {
    alignas(32) std::array<double, n_entries * n_lanes> packed;
    for (const auto &batch : group.batches)
    {
      Nodal     f{};
      Stiffness k{};
      if (!element(group, batch, gather(batch, x), f, matrix ? &k : nullptr))
        return false;
      for (unsigned lane = 0; lane < batch.n_elements; ++lane)
        for (unsigned i = 0; i < n_dofs; ++i)
          if (const int dof = batch.dof[lane][i]; dof >= 0)
            force[dof] += f[i][lane];
      if (!matrix)
        continue;
      for (unsigned i = 0; i < n_entries; ++i)
        k[i].store(&packed[i * n_lanes]);
      for (unsigned lane = 0; lane < batch.n_elements; ++lane)
      {
        const auto &slot = batch.slot[lane];
        for (unsigned i = 0; i < n_entries; ++i)
          matrix[slot[i]] += packed[i * n_lanes + lane];
      }
    }
    return true;
  }

  PartEnergies accept(Group &group, const double *x) const override
  {
    const auto           &branches = law_.branches();
    std::array<Number, 8> sums{};
    for (auto &batch : group.batches)
    {
      const Nodal u = gather(batch, x);
      if constexpr (Law::mixed)
        sums[0] += volume_energy(law_.volumetric(), batch, u);
      for (unsigned q = 0; q < n_points; ++q)
      {
        const Number weight = load(batch.weight[q]);
        const auto   here = motion(batch, u, q);
        const auto   stored = energies(here, q);
        for (unsigned k = 0; k < 3; ++k)
          sums[k] += weight * stored[k];
        Number lost(0.0);
        for (unsigned i = 0; i < branches.size(); ++i)
        {
          const auto  &branch = branches[i];
          const double remaining = group.remaining[i];
          auto        &elastic = batch.elastic[index(q, i)];
          const Number first_loss =
            branch.lost(branch.stored(Frame::of_strain(load(elastic)).strains), remaining);
          const auto frame = Frame::of_excess(trial(batch, here, q, i));
          const auto step = branch.push(frame.strains, remaining);
          const auto strain =
            frame.tensor({step.strain_factor * frame.strains[0], step.strain_factor * frame.strains[1],
                          step.strain_factor * frame.strains[2]});
          for (unsigned k = 0; k < n_components; ++k)
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

  std::vector<ElementFieldsOf<dim>> fields(const Group &group, const double *x) const override
  {
    std::vector<ElementFieldsOf<dim>> all;
    for (const auto &batch : group.batches)
    {
      const Nodal                  u = gather(batch, x);
      std::array<Number, n_points> pressure{};
      if constexpr (Law::mixed)
        pressure = volume_state(law_.volumetric(), batch, u).pressure;
      std::array<ElementFieldsOf<dim>, n_lanes> out;
      for (unsigned q = 0; q < n_points; ++q)
      {
        const auto here = motion(batch, u, q);
        Response   point = elastic(here, q);
        const auto stored = energies(here, q);
        Number     energy = stored[0] + stored[1] + stored[2];
        // The accepted elastic strains are the state at the end of the step.
        for (unsigned i = 0; i < law_.branches().size(); ++i)
        {
          const auto branch_frame = Frame::of_strain(load(batch.elastic[index(q, i)]));
          const auto rest = law_.branches()[i];
          energy += rest.stored(branch_frame.strains);
          branch_frame.add(
            materials::Hencky{rest.shear_modulus, rest.bulk_modulus}.response(branch_frame.strains), point);
        }
        const Number j = here.volume_ratio();
        for (unsigned lane = 0; lane < batch.n_elements; ++lane)
        {
          const double                     cauchy = 1 / j[lane], p = pressure[q][lane];
          std::array<double, n_components> stress;
          for (unsigned k = 0; k < n_components; ++k)
            stress[k] = k < 3 ? point.stress[k][lane] * cauchy + p : point.stress[k][lane] * cauchy;
          out[lane][q] = Kinematics::fields(stress, here.vertical_stretch(lane), j[lane], energy[lane],
                                            batch.dissipated[q][lane]);
        }
      }
      all.insert(all.end(), out.begin(), out.begin() + batch.n_elements);
    }
    return all;
  }

private:
  Law law_;

  std::size_t index(unsigned q, unsigned branch) const { return q * law_.branches().size() + branch; }

  /// Stress and tangent at a point, branches left out.
  Response elastic(const Motion &here, unsigned q) const
  {
    if constexpr (Law::in_axes)
      return in_space(law_.moduli(q), here);
    else
    {
      Response   point;
      const auto frame = Frame::of_excess(here.left_excess());
      frame.add(law_.response(frame.strains), point);
      return point;
    }
  }

  /// Stored at a point by kind, branches left out [J/m3].
  std::array<Number, 3> energies(const Motion &here, unsigned q) const
  {
    if constexpr (Law::in_axes)
      return {materials::energy_of(law_.moduli(q), MaterialStrain<Number>(here).log), Number(0.0),
              Number(0.0)};
    else
      return law_.energies(Frame::of_excess(here.left_excess()).strains);
  }

  Tensor trial(const Batch &batch, const Motion &here, unsigned q, unsigned branch) const
  {
    const auto excess = here.left_excess(), pushed = here.push_forward(load(batch.base[index(q, branch)]));
    Tensor     sum;
    for (unsigned k = 0; k < n_components; ++k)
      sum[k] = excess[k] + pushed[k];
    return sum;
  }

  bool element(const Group &group, const Batch &batch, const Nodal &u, Nodal &f, Stiffness *k) const
  {
    [[maybe_unused]] VolumeState volume;
    if constexpr (Law::mixed)
    {
      volume = volume_state(law_.volumetric(), batch, u);
      if (!volume.admissible)
        return false;
    }
    [[maybe_unused]] std::array<Nodal, n_modes> constraint{};
    for (unsigned q = 0; q < n_points; ++q)
    {
      const auto   here = motion(batch, u, q);
      const Number j = here.volume_ratio();
      if (here.refused(j, law_.smallest_volume_ratio()))
        return false;
      Response point = elastic(here, q);
      for (unsigned i = 0; i < law_.branches().size(); ++i)
      {
        const auto own = Frame::of_excess(trial(batch, here, q, i));
        own.add(law_.branches()[i].push(own.strains, group.remaining[i]).response, point);
      }
      const auto   shapes = current_shapes(batch, here, q);
      const Number weight = load(batch.weight[q]);
      if constexpr (Law::mixed)
      {
        // A fixed pressure p carries the stress p J I; its principal moduli are all p J.
        const Number pj = volume.pressure[q] * j;
        Frame::any().add({Number(0.0), {pj, pj, pj}, {pj, pj, pj, pj, pj, pj}}, point);
        if (k)
          for (unsigned a = 0; a < n_nodes; ++a)
          {
            const auto divergence = Kinematics::divergence(shapes[a]);
            for (unsigned m = 0; m < n_modes; ++m)
            {
              const Number phi = weight * j * pressure_shape(q, m);
              for (unsigned i = 0; i < dim; ++i)
                constraint[m][dim * a + i] += phi * divergence[i];
            }
          }
      }
      const auto weighted = point.times(weight);
      add_force(weighted.stress, shapes, f);
      if (k)
        add_stiffness(weighted, shapes, *k);
    }
    if constexpr (Law::mixed)
      if (k)
        add_volume_stiffness(volume, constraint, *k);
    return true;
  }
};

template <typename Isa, int dim, typename Material>
std::unique_ptr<SolidKernelOf<dim>> make_loops(const Material &material)
{
  return std::make_unique<ElementLoops<Isa, dim, PartLaw<Material>>>(PartLaw<Material>{material});
}
} // namespace solemech::solver
