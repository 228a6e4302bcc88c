// SPDX-License-Identifier: Apache-2.0
// A value with its doubt as a person writes it: "16.0 mm +- 0.5", "249 mm ± 6 mm", "64 % +- 3",
// "1.20 kg +- 1 %". What stands behind +- is half the width of the band that holds nine cases of ten, as
// everywhere in a settled model; without a unit it has that of the value, and % of anything but a share is
// relative.
#pragma once

#include "tools/language/doubted_case.h"
#include "tools/language/quantity.h"

#include <string>

namespace solemech::tools
{
struct DoubtedText
{
  std::string value, doubt; ///< doubt is empty when there is no +-
};

/// Parts a text at +- or ±; both parts without blanks around.
DoubtedText split_doubted(const std::string &text);

struct Doubted
{
  double      value = 0;     ///< SI, or points of the scale
  double      half_band = 0; ///< same unit; 0: none was written
  std::string scale;         ///< of a hardness

  double one_sigma() const { return half_band / doubts_in_half_band; }
};

/// @throws materials::InvalidQuantity also when the doubt is zero, negative or larger than the value
Doubted parse_doubted(const std::string &text, materials::Dimension dimension);
} // namespace solemech::tools
