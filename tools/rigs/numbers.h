// SPDX-License-Identifier: Apache-2.0
// How a kind of rig gets at its own numbers. Nobody else includes this: who needs them asks the kind.
#pragma once

#include "solver/case.h"

#include <variant>

namespace solemech::tools::rigs
{
/// The rig of a case that is known to have this one.
template <typename Struct>
const Struct &numbers_of(const solver::Case &setup)
{
  return std::get<Struct>(setup.rig);
}

template <typename Struct>
Struct &numbers_of(solver::Case &setup)
{
  return std::get<Struct>(setup.rig);
}
} // namespace solemech::tools::rigs
