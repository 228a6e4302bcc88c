// SPDX-License-Identifier: Apache-2.0
// A whole sole: its measurements and what it is made of, resolved and in SI. Tools produce it from a sole
// file. Layers are listed from the foot side to the ground.
#pragma once

#include "geometry/sole/sole_shape.h"
#include "materials/material.h"
#include "materials/plies.h"
#include "solver/case.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
struct SoleLayer
{
  std::string                            name; ///< address, unique in the sole
  materials::Material                    material;
  geometry::LayerShape                   shape;
  std::vector<materials::Ply>            plies;    ///< of a laminate, foot side first; else empty
  std::optional<materials::FlexuralData> flexural; ///< of a plate that was bent as a whole
};

struct SolePocket
{
  geometry::PocketShape  shape;
  std::optional<AirUnit> unit; ///< none: it is empty
};

struct Sole
{
  std::string                       label, title, note;
  bool                              invented = false; ///< it is made up, and says so
  geometry::OutlineShape            outline;
  geometry::BottomShape             bottom;
  std::vector<SoleLayer>            layers; ///< foot side first
  std::vector<SolePocket>           pockets;
  std::vector<geometry::PatchShape> patches; ///< of the tread
};

/// The measurements alone.
inline geometry::SoleShape shape_of(const Sole &sole)
{
  geometry::SoleShape shape{sole.outline, sole.bottom, {}, {}, sole.patches};
  for (const auto &layer : sole.layers)
    shape.layers.push_back(layer.shape);
  for (const auto &pocket : sole.pockets)
    shape.pockets.push_back(pocket.shape);
  return shape;
}
} // namespace solemech::solver
