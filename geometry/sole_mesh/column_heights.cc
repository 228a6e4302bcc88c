// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/column_heights.h"

#include "geometry/errors.h"

#include <stdexcept>

namespace solemech::geometry
{
std::vector<double> column_heights(const std::vector<double>   &interfaces,
                                   const std::vector<unsigned> &n_cells, const PlanPoint &place)
{
  if (interfaces.size() != n_cells.size() + 1)
    throw std::invalid_argument("a stack has one interface more than layers");
  std::vector<double> heights{interfaces.front()};
  for (std::size_t layer = 0; layer < n_cells.size(); ++layer)
  {
    const double from = interfaces[layer], thickness = interfaces[layer + 1] - from;
    if (!(thickness > 0))
      throw InvalidGeometry("thickness of layer " + std::to_string(layer + 1) + " from the ground, " +
                              in_mm(place[0]) + " from the heel and " + in_mm(place[1]) + " off the middle,",
                            thickness, "more than 0");
    for (unsigned row = 1; row <= n_cells[layer]; ++row)
      heights.push_back(from + thickness * row / n_cells[layer]);
  }
  return heights;
}

std::vector<unsigned> layers_of_rows(const std::vector<unsigned> &n_cells)
{
  std::vector<unsigned> layers;
  for (unsigned layer = 0; layer < n_cells.size(); ++layer)
    layers.insert(layers.end(), n_cells[layer], layer);
  return layers;
}
} // namespace solemech::geometry
