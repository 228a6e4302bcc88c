// SPDX-License-Identifier: Apache-2.0
// Kinds of rig. One struct of case.h may stand for several: a lug is slid once, worn down, or slid as the
// tread of a whole sole. Who answers for a kind is in a table: solver/rigs/registry.h runs it,
// tools/rigs/registry.h speaks of it.
#pragma once

#include "solver/case.h"

namespace solemech::solver
{
enum class RigKind { drop, press, gauge, slide, wear, tread, abrasion, hold };

/// The kind of a rig; a struct that is not named here does not compile.
struct RigKindOf
{
  RigKind operator()(const DropRig &) const { return RigKind::drop; }
  RigKind operator()(const PressRig &) const { return RigKind::press; }
  RigKind operator()(const DurometerRig &) const { return RigKind::gauge; }
  RigKind operator()(const SlideRig &rig) const
  {
    return rig.wear ? RigKind::wear : rig.tread ? RigKind::tread : RigKind::slide;
  }
  RigKind operator()(const AbrasionRig &) const { return RigKind::abrasion; }
  RigKind operator()(const HoldRig &) const { return RigKind::hold; }
};

inline RigKind rig_kind(const Rig &rig)
{
  return std::visit(RigKindOf(), rig);
}
} // namespace solemech::solver
