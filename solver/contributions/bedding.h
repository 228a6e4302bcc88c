// SPDX-License-Identifier: Apache-2.0
// Faces bedded on springs of given stiffness per area, in one direction: a shell left on the side of the
// plug, jaws that hold its foot.
#pragma once

#include "solver/contribution.h"
#include "solver/mesh/discretisation.h"

#include <functional>

namespace solemech::solver
{
class Bedding : public Contribution
{
public:
  /// @param component 0 radial, 1 vertical
  /// @param stiffness per area at a height z [m] of the unloaded face [Pa/m]
  Bedding(std::string name, const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces,
          unsigned component, const std::function<double(double z)> &stiffness);
  /// The same all over.
  Bedding(std::string name, const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces,
          unsigned component, double stiffness)
    : Bedding(std::move(name), mesh, faces, component, [stiffness](double) { return stiffness; })
  {
  }

  bool        add(const Vector &x, Vector &force, Tangent *tangent) const override;
  void        accept(const Vector &x, double dt) override;
  void        energies(std::vector<EnergyEntry> &entries) const override;
  std::string name() const override { return name_; }

private:
  struct Entry
  {
    int    a, b;
    double k; ///< [N/m]
  };
  std::string           name_;
  const Discretisation *mesh_;
  std::vector<Entry>    entries_; ///< full symmetric list
  double                stored_ = 0;
};
} // namespace solemech::solver
