// SPDX-License-Identifier: Apache-2.0
// Random but plausible stacks with an air unit under a drop weight, a press or a hardness gauge: units with
// and without fibres, under pressure, slack, leaking and open, bare and built in. Dimensions are those of
// shoes and benches (common practice, no source).
#pragma once

#include "solver/case.h"

namespace solemech::tests
{
/// The same case for the same number on every machine; drops, presses and gauges in turn.
solver::Case unit_case(unsigned number);
} // namespace solemech::tests
