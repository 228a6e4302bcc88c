// SPDX-License-Identifier: Apache-2.0
// Texts and numbers on their way into the page: what is no UTF-8 is replaced, numbers keep the digits that
// mean something.
#pragma once

#include "tools/language/number_text.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// The text with the replacement character for every byte that is no UTF-8 and for control characters other
/// than tab and line feed.
std::string readable(const std::string &text);

/// Rounded to `digits` significant digits.
double rounded(double value, int digits);

/// The values times `factor`, rounded to `digits` digits of the greatest of them.
std::vector<double> rounded(const std::vector<double> &values, double factor, int digits = 6);

using tools::capital;
using tools::energy_text;
using tools::share_words;
} // namespace solemech::tools::report
