// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/registry.h"

#include "solver/rigs/abrasion.h"
#include "solver/rigs/drop.h"
#include "solver/rigs/durometer.h"
#include "solver/rigs/hold.h"
#include "solver/rigs/press.h"
#include "solver/rigs/slide.h"
#include "solver/rigs/tread.h"
#include "solver/rigs/wear.h"

#include <algorithm>
#include <cassert>
#include <iterator>

namespace solemech::solver
{
namespace
{
/// A run function of one rig as one of any case.
template <auto function>
struct OfCase;

template <typename Struct,
          Result (*function)(const Case &, const Struct &, const Resolution &, const RunOptions &)>
struct OfCase<function>
{
  static Result run(const Case &input, const Resolution &resolution, const RunOptions &options)
  {
    return function(input, std::get<Struct>(input.rig), resolution, options);
  }
};

/// A bench without elements has no resolution.
template <typename Struct, Result (*function)(const Case &, const Struct &)>
struct OfCase<function>
{
  static Result run(const Case &input, const Resolution &, const RunOptions &)
  {
    return function(input, std::get<Struct>(input.rig));
  }
};

/// A press is read at one compression, where a blow's force and energy make up for each other: its mesh is
/// finer by this.
constexpr double press_mesh = 1.125;

constexpr RigRun rig_runs[] = {
  {RigKind::drop, OfCase<run_drop>::run},         {RigKind::press, OfCase<run_press>::run, press_mesh},
  {RigKind::gauge, OfCase<run_durometer>::run},   {RigKind::slide, OfCase<run_slide>::run},
  {RigKind::wear, OfCase<run_wear>::run},         {RigKind::tread, OfCase<run_tread>::run},
  {RigKind::abrasion, OfCase<run_abrasion>::run}, {RigKind::hold, OfCase<run_hold>::run, press_mesh},
};
} // namespace

const RigRun &rig_run(const Rig &rig)
{
  const auto *found = std::find_if(std::begin(rig_runs), std::end(rig_runs),
                                   [kind = rig_kind(rig)](const RigRun &each) { return each.kind == kind; });
  assert(found != std::end(rig_runs));
  return *found;
}
} // namespace solemech::solver
