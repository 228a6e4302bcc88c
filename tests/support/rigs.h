// SPDX-License-Identifier: Apache-2.0
// One of each kind of rig, for tests that are about all of them. A new rig is among them by itself.
#pragma once

#include "solver/rig.h"

#include <utility>
#include <variant>
#include <vector>

namespace solemech::tests
{
/// A new rig of each struct, and the two kinds more that a lug on a court stands for.
inline std::vector<solver::Rig> one_of_each_rig()
{
  std::vector<solver::Rig> rigs = []<typename... Rigs>(const std::variant<Rigs...> *) {
    return std::vector<solver::Rig>{Rigs()...};
  }(static_cast<const solver::Rig *>(nullptr));
  solver::SlideRig worn, whole;
  worn.wear = solver::WearLife();
  whole.tread = solver::Tread();
  rigs.insert(rigs.end(), {worn, whole});
  return rigs;
}
} // namespace solemech::tests
