// SPDX-License-Identifier: Apache-2.0
// Thickness of the layers on the axis, from the nodes on their interfaces.
#pragma once

#include "solver/case.h"
#include "solver/mesh/discretisation.h"

#include <vector>

namespace solemech::solver
{
class LayerThickness
{
public:
  LayerThickness() = default;

  /// @param mesh    as it is drawn; it may be moved later, and has to outlive this
  /// @param layers  foot side first
  LayerThickness(const Discretisation &mesh, const std::vector<Layer> &layers);

  /// Of each layer at the unknowns x, foot side first [m].
  std::vector<double> at(const Vector &x) const;

private:
  const Discretisation *mesh_ = nullptr;
  std::vector<unsigned> nodes_; ///< foot side first
};
} // namespace solemech::solver
