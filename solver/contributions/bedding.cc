// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/bedding.h"

#include "solver/kernels/quadratic_element.h"

#include <cmath>

namespace solemech::solver
{
Bedding::Bedding(std::string name, const Discretisation &mesh,
                 const std::vector<geometry::BoundaryFace> &faces, unsigned component,
                 const std::function<double(double z)> &stiffness)
  : name_(std::move(name)), mesh_(&mesh)
{
  for (const auto &face : faces)
  {
    const auto   nodes = mesh.edge(face);
    const auto  &first = mesh.nodes()[nodes[0]], &last = mesh.nodes()[nodes[2]];
    const double length = std::hypot(last[0] - first[0], last[1] - first[1]);
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned b = 0; b < 3; ++b)
      {
        double k = 0;
        for (unsigned q = 0; q < 3; ++q)
        {
          const double s = gauss_abscissae[q], radius = (1 - s) * first[0] + s * last[0];
          const double around = mesh.around(radius), here = stiffness((1 - s) * first[1] + s * last[1]);
          k += gauss_weights[q] * quadratic_shape(a, s) * quadratic_shape(b, s) * around * here;
        }
        const int row = mesh.dof(nodes[a], component), column = mesh.dof(nodes[b], component);
        if (row >= 0 && column >= 0 && k != 0)
          entries_.push_back({row, column, k * length});
      }
  }
}

bool Bedding::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  for (const auto &entry : entries_)
  {
    force[entry.a] += entry.k * x[entry.b];
    if (tangent && entry.a >= entry.b)
      mesh_->add_entry(tangent->values, entry.a, entry.b, entry.k);
  }
  return true;
}

void Bedding::accept(const Vector &x, double)
{
  stored_ = 0;
  for (const auto &entry : entries_)
    stored_ += 0.5 * entry.k * x[entry.a] * x[entry.b];
}

void Bedding::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({name_, "bedding", EnergyKind::stored, stored_});
}
} // namespace solemech::solver
