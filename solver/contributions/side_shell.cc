// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/side_shell.h"

#include "solver/kernels/part_laws.h"

#include <cmath>
#include <numbers>

namespace solemech::solver
{
SideShell::SideShell(const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces,
                     double stiffness)
  : mesh_(&mesh)
{
  static constexpr std::array<double, 3> weights{5.0 / 18, 8.0 / 18, 5.0 / 18};
  for (const auto &face : faces)
  {
    const auto   nodes = mesh.edge(face);
    const auto  &first = mesh.nodes()[nodes[0]], &last = mesh.nodes()[nodes[2]];
    const double length = std::hypot(last[0] - first[0], last[1] - first[1]);
    const double around = mesh.section() == MeshSection::axisymmetric ? 2 * std::numbers::pi * first[0] : 2.0;
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned b = 0; b < 3; ++b)
      {
        double k = 0;
        for (unsigned q = 0; q < 3; ++q)
          k += weights[q] * quadratic_shape(a, gauss_abscissae[q]) * quadratic_shape(b, gauss_abscissae[q]);
        const int row = mesh.dof(nodes[a], 0), column = mesh.dof(nodes[b], 0);
        if (row >= 0 && column >= 0)
          entries_.push_back({row, column, k * stiffness * length * around});
      }
  }
}

bool SideShell::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  for (const auto &entry : entries_)
  {
    force[entry.a] += entry.k * x[entry.b];
    if (tangent && entry.a >= entry.b)
      mesh_->add_entry(tangent->values, entry.a, entry.b, entry.k);
  }
  return true;
}

void SideShell::accept(const Vector &x, double)
{
  stored_ = 0;
  for (const auto &entry : entries_)
    stored_ += 0.5 * entry.k * x[entry.a] * x[entry.b];
}

void SideShell::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({"shell", "bedding", EnergyKind::stored, stored_});
}
} // namespace solemech::solver
