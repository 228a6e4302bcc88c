// SPDX-License-Identifier: Apache-2.0
// A shell left on the side of the plug: a radial bedding of given stiffness per area.
#pragma once

#include "solver/contribution.h"

namespace solemech::solver
{
class SideShell : public Contribution
{
public:
  /// @param stiffness radial, per area [Pa/m]
  SideShell(const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces, double stiffness);

  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return "shell"; }

private:
  struct Entry
  {
    int    a, b;
    double k; ///< [N/m]
  };
  const Discretisation *mesh_;
  std::vector<Entry>    entries_; ///< full symmetric list
  double                stored_ = 0;
};
} // namespace solemech::solver
