// SPDX-License-Identifier: Apache-2.0
// A part of the stack: its elements, its law, its energies.
#pragma once

#include "solver/contribution.h"
#include "solver/kernels/solid_kernel.h"

namespace solemech::solver
{
class SolidBody : public Contribution
{
public:
  SolidBody(ElementGroup group, std::unique_ptr<SolidKernel> kernel);

  void        begin_step(const Vector &x, double dt) override { kernel_->begin_step(group_, x.data(), dt); }
  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return group_.part; }

  const ElementGroup        &group() const { return group_; }
  std::vector<ElementFields> fields(const Vector &x) const { return kernel_->fields(group_, x.data()); }

private:
  ElementGroup                 group_;
  std::unique_ptr<SolidKernel> kernel_;
  PartEnergies                 now_; ///< stored energies; losses since the start
};
} // namespace solemech::solver
