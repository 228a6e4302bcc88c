// SPDX-License-Identifier: Apache-2.0
// What a bench sheet says before and after it was settled, in words of the bench.
#pragma once

#include "tools/sheet/settle_sheet.h"

#include <string>

namespace solemech::tools
{
/// Readings beside predictions, what they settle, foams that fit, what stays open.
std::string settled_text(const Sheet &sheet, const SettledSheet &answer);
} // namespace solemech::tools
