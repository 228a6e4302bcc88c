// SPDX-License-Identifier: Apache-2.0
// What a bench sheet leaves out: bands for thicknesses and gauge pressures that nobody wrote, and the doubts
// of the instruments for numbers written without +-. All of it is said. Common practice, no source.
#pragma once

#include "tools/answers/sheet/sheet.h"

#include <string>

namespace solemech::tools
{
/// A value for an entry that is not there, as a person would write it, with its doubt.
struct MissingValue
{
  std::string text;  ///< "12 mm +- 6"
  std::string words; ///< "a foam layer of a sole"
};

/// @param family  of the layer's material: "foam", "rubber", anything else counts as plate
MissingValue missing_thickness(const std::string &family, bool holds_unit);
MissingValue missing_gauge_pressure();

/// Adds an unknown for every measured number of the case that has no doubt yet, as wide as its instrument is
/// good, and a sentence for each kind. Numbers whose doubt cannot show on a reading, and those whose doubt
/// the model does not carry, are named as exact.
void add_instrument_doubts(Sheet &sheet);
} // namespace solemech::tools
