// SPDX-License-Identifier: Apache-2.0
// The list of rigs: struct, kind and run of each, and nothing else of theirs. One struct may stand for
// several kinds: a lug is slid once, worn down, or slid as the tread of a whole sole. tools/rigs/registry.h
// speaks of the kinds.
#pragma once

#include "solver/rigs/abrasion.h"
#include "solver/rigs/drop.h"
#include "solver/rigs/durometer.h"
#include "solver/rigs/hold.h"
#include "solver/rigs/lug_on_court.h"
#include "solver/rigs/press.h"

#include <variant>

/// Each kind once, in the order in which they are told of.
#define SOLEMECH_RIG_KINDS(row)                                                                              \
  row(drop) row(press) row(hold) row(slide) row(wear) row(gauge) row(abrasion) row(tread)

namespace solemech::solver
{
using Rig = std::variant<DropRig, PressRig, HoldRig, DurometerRig, SlideRig, AbrasionRig>;

#define SOLEMECH_KIND(name) name,
enum class RigKind { SOLEMECH_RIG_KINDS(SOLEMECH_KIND) };
#undef SOLEMECH_KIND

/// The kind of a rig; a struct that is not named here does not compile.
struct RigKindOf
{
  RigKind operator()(const DropRig &) const { return RigKind::drop; }
  RigKind operator()(const PressRig &) const { return RigKind::press; }
  RigKind operator()(const HoldRig &) const { return RigKind::hold; }
  RigKind operator()(const DurometerRig &) const { return RigKind::gauge; }
  RigKind operator()(const SlideRig &rig) const
  {
    return rig.wear ? RigKind::wear : rig.tread ? RigKind::tread : RigKind::slide;
  }
  RigKind operator()(const AbrasionRig &) const { return RigKind::abrasion; }
};

inline RigKind rig_kind(const Rig &rig)
{
  return std::visit(RigKindOf(), rig);
}

/// What touches the stack.
inline const Tup &tup_of(const Rig &rig)
{
  return std::visit([](const auto &any) -> const Tup & { return any.tup; }, rig);
}

/// Mesh of a rig: finer by this than that of a blow [-].
inline double rig_mesh(const Rig &rig)
{
  return std::visit(
    []<typename Struct>(const Struct &) {
      if constexpr (requires { Struct::mesh; })
        return Struct::mesh;
      else
        return 1.0;
    },
    rig);
}
} // namespace solemech::solver
