// SPDX-License-Identifier: Apache-2.0
// The bands of what use leaves of a material: after_use = [{ kind = "ageing", use = "500 km", ... }].
#pragma once

#include "materials/material.h"
#include "tools/language/fields.h"

#include <vector>

namespace solemech::materials
{
/// Bands of a material block that has the entry `after_use`. Slips go to `problems`.
std::vector<UseBand> read_use_bands(const Fields &material, Problems &problems);
} // namespace solemech::materials
