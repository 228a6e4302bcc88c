// SPDX-License-Identifier: Apache-2.0
// Random but valid cases from a number: stacks of foams, boards, plates, air units and rubber skins under
// random weights and presses. The numbers stay within what benches and shoes show (common practice, no source).
#pragma once

#include "solver/case.h"

namespace solemech::tests
{
/// The same case for the same number on every machine.
solver::Case random_case(unsigned number);
} // namespace solemech::tests
