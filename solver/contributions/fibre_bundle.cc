// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/fibre_bundle.h"

#include "solver/kernels/quadratic_element.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace solemech::solver
{
FibreBundle::FibreBundle(std::string name, const Discretisation &mesh, const geometry::ChamberMesh &chamber,
                         materials::TensileFibres law)
  : name_(std::move(name)), law_(law), mesh_(&mesh)
{
  for (const auto &[lower, upper] : chamber.facing)
  {
    auto below = mesh.edge(mesh.mesh().faces[lower]), above = mesh.edge(mesh.mesh().faces[upper]);
    // The two faces run in opposite directions round the gas.
    if (std::abs(mesh.nodes()[below[0]][0] - mesh.nodes()[above[0]][0]) > 1e-12)
      std::swap(above[0], above[2]);
    // Fibres are counted by the drawn area, whatever shape the films have been inflated to.
    const auto  &face = mesh.mesh().faces[lower];
    const auto   ends = geometry::face_vertices(mesh.mesh().cells[face.cell], face.face);
    const double first = mesh.mesh().vertices[ends[0]][0], along = mesh.mesh().vertices[ends[1]][0] - first;
    for (unsigned q = 0; q < 3; ++q)
    {
      PairPoint    pair{};
      const auto   shapes = edge_shapes(gauss_abscissae[q]);
      const double radius = first + gauss_abscissae[q] * along;
      for (unsigned a = 0; a < 3; ++a)
      {
        pair.node[a] = mesh.nodes()[below[a]], pair.node[3 + a] = mesh.nodes()[above[a]];
        for (unsigned c = 0; c < 2; ++c)
          pair.dof[2 * a + c] = mesh.dof(below[a], c), pair.dof[6 + 2 * a + c] = mesh.dof(above[a], c);
      }
      pair.shape = shapes.value;
      const double around = mesh.around(radius);
      pair.area = gauss_weights[q] * std::abs(along) * around;
      pairs_.push_back(pair);
    }
  }
}

std::array<double, 2> FibreBundle::span(const PairPoint &pair, const Vector &x) const
{
  std::array<double, 2> span{};
  for (unsigned i = 0; i < 12; ++i)
  {
    const double position = pair.node[i / 2][i % 2] + (pair.dof[i] >= 0 ? x[pair.dof[i]] : 0.0);
    span[i % 2] += (i < 6 ? -1 : 1) * pair.shape[(i / 2) % 3] * position;
  }
  return span;
}

bool FibreBundle::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  for (const auto &pair : pairs_)
  {
    const auto s = span(pair, x);
    if (s[1] <= law_.smallest_length())
      return false;
    const double length = std::hypot(s[0], s[1]);
    // A pile is pressed flat vertically; fibres pull along their own direction.
    const bool   packed = s[1] < law_.packed_height;
    const double d[2] = {packed ? 0.0 : s[0] / length, packed ? 1.0 : s[1] / length};
    const auto   response = law_.response(packed ? s[1] : length);
    if (response.tension == 0)
      continue;
    const double pull = pair.area * response.tension, stiff = pair.area * response.stiffness;
    const double turn = packed ? 0.0 : pull / length;
    for (unsigned i = 0; i < 12; ++i)
    {
      const int a = pair.dof[i];
      if (a < 0)
        continue;
      const double ni = (i < 6 ? -1 : 1) * pair.shape[(i / 2) % 3];
      force[a] += ni * pull * d[i % 2];
      if (!tangent)
        continue;
      for (unsigned j = 0; j < 12; ++j)
      {
        const int b = pair.dof[j];
        if (b < 0 || a < b)
          continue;
        const double nj = (j < 6 ? -1 : 1) * pair.shape[(j / 2) % 3];
        const double dd = d[i % 2] * d[j % 2];
        mesh_->add_entry(tangent->values, a, b,
                         ni * nj * (stiff * dd + turn * ((i % 2 == j % 2 ? 1.0 : 0.0) - dd)));
      }
    }
  }
  return true;
}

void FibreBundle::accept(const Vector &x, double)
{
  stored_ = 0;
  for (const auto &pair : pairs_)
  {
    const auto s = span(pair, x);
    stored_ += pair.area * law_.response(s[1] < law_.packed_height ? s[1] : std::hypot(s[0], s[1])).energy;
  }
}

void FibreBundle::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({name_, "fibres", EnergyKind::stored, stored_});
}

double FibreBundle::pull(const Vector &x) const
{
  double sum = 0;
  for (const auto &pair : pairs_)
  {
    const auto   s = span(pair, x);
    const double length = std::hypot(s[0], s[1]);
    if (s[1] >= law_.packed_height)
      sum += pair.area * law_.response(length).tension * s[1] / length;
  }
  return sum;
}

double FibreBundle::smallest_height(const Vector &x) const
{
  double smallest = std::numeric_limits<double>::infinity();
  for (const auto &pair : pairs_)
    smallest = std::min(smallest, span(pair, x)[1]);
  return smallest;
}
} // namespace solemech::solver
