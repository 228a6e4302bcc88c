// SPDX-License-Identifier: Apache-2.0
// The useful travel of a layer. Foam: to the densification strain 1 - 1.4 R (Gibson & Ashby, Cellular
// Solids); air unit: until film and fibres are packed.
#pragma once

#include "solver/case.h"

namespace solemech::solver
{
/// Compressive strain [-] at which a layer locks up, or 0 when it has no such limit.
inline double locking_strain(const Layer &layer)
{
  if (layer.unit)
  {
    const double inside = layer.thickness - 2 * layer.unit->film_thickness;
    return inside * (1 - layer.unit->packed_share) / layer.thickness;
  }
  const auto *foam = std::get_if<materials::FoamData>(&layer.material.data);
  return foam && foam->relative_density > 0 ? 1 - 1.4 * foam->relative_density : 0.0;
}
} // namespace solemech::solver
