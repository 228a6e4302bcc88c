// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/solid_body.h"

namespace solemech::solver
{
template <int dim>
SolidBodyOf<dim>::SolidBodyOf(ElementGroupOf<dim> group, std::unique_ptr<SolidKernelOf<dim>> kernel)
  : group_(std::move(group)), kernel_(std::move(kernel))
{
}

template <int dim>
bool SolidBodyOf<dim>::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  return kernel_->assemble(group_, x.data(), force.data(), tangent ? tangent->values.data() : nullptr);
}

template <int dim>
void SolidBodyOf<dim>::accept(const Vector &x, double)
{
  auto step = kernel_->accept(group_, x.data());
  step.lost_relaxing += now_.lost_relaxing;
  step.lost_slipping += now_.lost_slipping;
  step.lost_recovery += now_.lost_recovery;
  now_ = step;
}

template <int dim>
void SolidBodyOf<dim>::energies(std::vector<EnergyEntry> &entries) const
{
  const std::string_view part = group_.part;
  entries.push_back({part, "network", EnergyKind::stored, now_.network});
  if (now_.cell_gas != 0)
    entries.push_back({part, "cell gas", EnergyKind::stored, now_.cell_gas});
  if (now_.densification != 0)
    entries.push_back({part, "densification", EnergyKind::stored, now_.densification});
  if (kernel_->n_branches() == 0)
    return;
  entries.push_back({part, "relaxing branches", EnergyKind::stored, now_.relaxing});
  entries.push_back({part, "relaxing", EnergyKind::dissipated, now_.lost_relaxing});
  if (now_.slipping != 0 || now_.lost_slipping != 0)
  {
    entries.push_back({part, "slipping branches", EnergyKind::stored, now_.slipping});
    entries.push_back({part, "slipping", EnergyKind::dissipated, now_.lost_slipping});
    entries.push_back({part, "recovery", EnergyKind::dissipated, now_.lost_recovery});
  }
}

template class SolidBodyOf<2>;
template class SolidBodyOf<3>;
} // namespace solemech::solver
