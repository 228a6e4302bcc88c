// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/registry.h"

#include <algorithm>
#include <cassert>
#include <string_view>
#include <utility>

namespace solemech::tools::rigs
{
const std::vector<const Kind *> &kinds()
{
#define SOLEMECH_KIND(name) &name(),
  static const std::vector<const Kind *> all{SOLEMECH_RIG_KINDS(SOLEMECH_KIND)};
#undef SOLEMECH_KIND
  return all;
}

const Kind &kind_of(const solver::Case &setup)
{
  const auto found = std::find_if(kinds().begin(), kinds().end(),
                                  [id = rig_kind(setup.rig)](const Kind *kind) { return kind->id() == id; });
  assert(found != kinds().end());
  return **found;
}

const solver::DropRig *fall_of(const solver::Case &setup)
{
  return kind_of(setup).fall(setup);
}

solver::DropRig *fall_of(solver::Case &setup)
{
  return const_cast<solver::DropRig *>(fall_of(std::as_const(setup))); // the case may be changed
}

std::optional<InputRange> input_range(const Run &run, const std::string &reading)
{
  return kind_of(run.setup).input_range(run, reading);
}

std::vector<RigDifference> differences(const solver::Case &a, const solver::Case &b)
{
  if (same_rig(a.rig, b.rig))
    return {};
  if (are_of_one_family(a, b))
    return kind_of(a).differences(a, b);
  return {{"rig",
           {{"rig", kind_of(a).family(), kind_of(b).family()}},
           [](solver::Case &to, const solver::Case &from) { to.rig = from.rig; }}};
}

bool are_of_one_family(const solver::Case &a, const solver::Case &b)
{
  return std::string_view(kind_of(a).family()) == kind_of(b).family();
}
} // namespace solemech::tools::rigs
