// SPDX-License-Identifier: Apache-2.0
#include "solver/models/layer_thickness.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
LayerThickness::LayerThickness(const Discretisation &mesh, const std::vector<Layer> &layers) : mesh_(&mesh)
{
  const auto &drawn = mesh.nodes();
  const auto  nearest_to = [&](double level) {
    const auto off = [&](const Point &node) { return std::hypot(node[0], node[1] - level); };
    return static_cast<unsigned>(std::ranges::min_element(drawn, {}, off) - drawn.begin());
  };
  double level = stack_height(layers);
  nodes_.push_back(nearest_to(level));
  for (const auto &layer : layers)
    nodes_.push_back(nearest_to(level -= layer.thickness));
}

std::vector<double> LayerThickness::at(const Vector &x) const
{
  const auto level = [&](unsigned node) {
    const int dof = mesh_->dof(node, 1);
    return mesh_->nodes()[node][1] + (dof >= 0 ? x[dof] : 0.0);
  };
  std::vector<double> thickness;
  for (std::size_t i = 0; i + 1 < nodes_.size(); ++i)
    thickness.push_back(level(nodes_[i]) - level(nodes_[i + 1]));
  return thickness;
}
} // namespace solemech::solver
