// SPDX-License-Identifier: Apache-2.0
// Values and bands as a bench reads them: in its units, with the decimals that its instruments have.
#pragma once

#include "tools/language/quantity.h"
#include "tools/study/settle.h"

#include <string>

namespace solemech::tools
{
/// "247 mm +-6", in the unit of the bench.
std::string band_text(const settle::Band &band, materials::Dimension dimension, const std::string &unit = {});

/// "6 mm": half a band with unit and decimals of its value.
std::string half_text(double half, double value, materials::Dimension dimension,
                      const std::string &unit = {});

/// "247 mm", in the unit of the bench.
std::string value_text(double value, materials::Dimension dimension, const std::string &unit = {});

/// "5.6 mm": with a decimal more than band_text, to tell bands apart.
std::string fine_text(double value, materials::Dimension dimension);
} // namespace solemech::tools
