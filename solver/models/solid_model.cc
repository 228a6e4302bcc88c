// SPDX-License-Identifier: Apache-2.0
#include "solver/models/solid_model.h"

#include <numeric>

namespace solemech::solver
{
void fill_shares(ElementGroupOf<3> &group, const std::vector<double> &shares)
{
  for (std::size_t b = 0; b < group.batches.size(); ++b)
  {
    auto &batch = group.batches[b];
    for (unsigned lane = 0; lane < batch.n_elements; ++lane)
    {
      const double share = shares[b * n_lanes + lane];
      for (auto &weight : batch.weight)
        weight[lane] *= share;
      for (auto &entry : batch.projection) // inverse of a matrix of the weights
        entry[lane] /= share;
    }
  }
}

SolidModel::SolidModel(QuadraticMesh<3> solid, std::vector<SolidPart> parts, const HeldAt &held)
{
  std::vector<bool> fixed;
  for (const auto &place : solid.nodes())
    for (const bool component : held(place))
      fixed.push_back(component);
  std::vector<unsigned> owner(solid.n_nodes());
  std::iota(owner.begin(), owner.end(), 0u);
  solid.number_unknowns(fixed, owner);
  stand_on(std::make_unique<QuadraticMesh<3>>(std::move(solid)));

  for (auto &part : parts)
  {
    auto group = mesh->group(part.name, part.cells, part.kernel->n_branches(), mesh->nodes(), {});
    if (!part.shares.empty())
      fill_shares(group, part.shares);
    if (part.density > 0)
      mesh->add_mass(group, part.density, equation.mass.data());
    bodies.push_back(&equation.contribute<SolidBodyOf<3>>(std::move(group), std::move(part.kernel)));
  }
}
} // namespace solemech::solver
