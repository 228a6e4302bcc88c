// SPDX-License-Identifier: Apache-2.0
// The changes that lead from case A to case B, each as people would name it, and what each of them governs.
// Layers that answer to each other give one change when they are of different kind ("core -> air unit"), else
// one for each of material, thickness, air and build; a layer that only one stack has is added or taken out;
// the rubber is one change, and so is a board or a plate. When more than one change alters the thickness of
// the cushion, its height is a change of its own, together with the radius of the plug; boards, plates and
// inserts bring their own height, so that foam thinned to make room for one is a change of the foam. Rig,
// surroundings, side and base of the plug follow.
#pragma once

#include "tools/answers/compare/alignment.h"
#include "tools/rigs/difference.h"

#include <string>
#include <vector>

namespace solemech::tools
{
enum class ChangeKind {
  layer,
  material,
  thickness,
  air,
  build,
  outsole,
  plate,
  size,
  plug,
  rig,
  surroundings
};

struct StackChange
{
  ChangeKind                kind;
  std::string               name; ///< "core -> air unit", "topper added", "thinner stack"
  std::vector<ChangeDetail> details;
  std::vector<std::size_t>  slots = {}; ///< whose layers it touches
};

/// Number of the change that decides each property of a pair of layers; `none`: A and B agree.
struct Slot
{
  static constexpr int none = -1;
  LayerPair            layers;
  int                  whole = none;    ///< the layer as such; decides alone
  int                  material = none; ///< with its ring
  int                  thickness = none;
  int                  air = none;   ///< gauge pressure and state of a unit
  int                  build = none; ///< everything else of a unit, its height too
};

/// Number of a change of the rig, and what it does.
struct RigSlot
{
  int      change;
  RigTaker take;
};

struct ChangePlan
{
  solver::Case             a, b;
  std::vector<Slot>        slots;   ///< foot side first
  std::vector<StackChange> changes; ///< in the order of the stack, then size, radius, plug, rig, surroundings
  int                  size = Slot::none, radius = Slot::none, plug = Slot::none, surroundings = Slot::none;
  std::vector<RigSlot> rig;
  /// Mixtures get the cushion height of A or B by scaling their foam layers alike.
  bool height_is_kept = false;
};

/// Both cases must be of one section (axisymmetric or plane strain).
ChangePlan planned_changes(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools
