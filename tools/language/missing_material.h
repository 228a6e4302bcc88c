// SPDX-License-Identifier: Apache-2.0
// What to write in place of a material that is not in the library: the name that was meant, by its letters;
// or, for stuff that people know and the library does not hold, what it holds of nearest stiffness.
#pragma once

#include "tools/language/material_reader.h"

#include <string>

namespace solemech::materials
{
/// A cure for "there is no material NAME", a sentence without a full stop.
std::string instead_of_material(const std::string &name, const MaterialSource &known);
} // namespace solemech::materials
