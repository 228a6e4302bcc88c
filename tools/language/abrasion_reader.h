// SPDX-License-Identifier: Apache-2.0
// An abrasion bench: the block [abrasion], a sleeve on a rotary tool or the drum of ISO 4649.
#pragma once

#include "solver/case.h"
#include "tools/language/fields.h"

namespace solemech::tools
{
/// The bench and what its abrasive takes from the reference rubber. Entries that mean nothing for the tool, a
/// band that does not hold the coefficient and a mass without that of the cloth are problems.
solver::AbrasionRig read_abrasion(const materials::Fields &fields, const materials::Material &reference);
} // namespace solemech::tools
