// SPDX-License-Identifier: Apache-2.0
#include "solver/models/section_model.h"

#include "solver/part_law.h"

#include <algorithm>

namespace solemech::solver
{
namespace
{
/// A section is drawn a metre wide. Weights grow with the width of a cell, the inverse of its mass matrix of
/// the pressure falls with it.
void widen(ElementGroup &group, const std::vector<double> &widths)
{
  std::size_t first = 0;
  for (auto &batch : group.batches)
  {
    for (unsigned lane = 0; lane < batch.n_elements; ++lane)
    {
      for (auto &weight : batch.weight)
        weight[lane] *= widths[first + lane];
      for (auto &entry : batch.projection)
        entry[lane] /= widths[first + lane];
    }
    first += batch.n_elements;
  }
}
} // namespace

double greatest_width(const LongSection &section)
{
  std::vector<double> sums(section.mesh.cells.size(), 0.0);
  for (const auto &part : section.parts)
    for (std::size_t i = 0; i < part.cells.size(); ++i)
      sums[part.cells[i]] += part.widths[i];
  return *std::max_element(sums.begin(), sums.end());
}

SectionModel::SectionModel(const LongSection &section, const Case &input, const Held &held)
  : width(greatest_width(section))
{
  stand_on(std::make_unique<Discretisation>(section.mesh, MeshSection::whole_plane, held));
  for (const auto &part : section.parts)
  {
    auto kernel = make_part_kernel(part.material, 1.0, input);
    auto group = mesh->QuadraticMesh::group(part.name, part.cells, kernel->n_branches(), mesh->nodes(), {});
    widen(group, part.widths);
    mesh->add_mass(group, part.material.density, equation.mass.data());
    bodies.push_back(&equation.contribute<SolidBody>(std::move(group), std::move(kernel)));
  }
}
} // namespace solemech::solver
