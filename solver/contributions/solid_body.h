// SPDX-License-Identifier: Apache-2.0
// A part of a mesh, in a section or in space: its elements, its law, its energies.
#pragma once

#include "solver/contribution.h"
#include "solver/kernels/solid_kernel.h"

namespace solemech::solver
{
template <int dim>
class SolidBodyOf : public Contribution
{
public:
  SolidBodyOf(ElementGroupOf<dim> group, std::unique_ptr<SolidKernelOf<dim>> kernel);

  void        begin_step(const Vector &x, double dt) override { kernel_->begin_step(group_, x.data(), dt); }
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return group_.part; }

  const ElementGroupOf<dim>        &group() const { return group_; }
  std::vector<ElementFieldsOf<dim>> fields(const Vector &x) const
  {
    return kernel_->fields(group_, x.data());
  }

private:
  ElementGroupOf<dim>                 group_;
  std::unique_ptr<SolidKernelOf<dim>> kernel_;
  PartEnergies                        now_; ///< stored energies; losses since the start
};

using SolidBody = SolidBodyOf<2>;
} // namespace solemech::solver
