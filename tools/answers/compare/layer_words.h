// SPDX-License-Identifier: Apache-2.0
// Layers and their properties in words, for lists of differences.
#pragma once

#include "solver/case.h"
#include "tools/language/number_text.h"

#include <string>

namespace solemech::tools
{
/// "eva-soft, 54 mm wide in eva-firm".
std::string material_words(const solver::Layer &layer);

/// Material, ring, air and thickness: "eva-firm 4 mm", "air unit 8 mm, 62 mm wide, 140 kPa gauge, in
/// eva-firm".
std::string layer_words(const solver::Layer &layer);

/// What a layer is called beside its name in another stack: "air unit" for a unit, else its name.
std::string short_name(const solver::Layer &layer);
} // namespace solemech::tools
