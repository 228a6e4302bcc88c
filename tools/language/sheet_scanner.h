// SPDX-License-Identifier: Apache-2.0
// Looks through the text of a sheet before the TOML parser does: bytes that are no text, broken UTF-8 (RFC
// 3629), curly quotes, values with units or text outside quotes, decimal commas, quotes that are not closed.
// Each slip is noted with its cure and mended in a copy. It also keeps from the parser what it does not bear
// (characters outside ASCII where TOML has no place for them).
#pragma once

#include "tools/language/problem.h"

#include <string>
#include <string_view>

namespace solemech::materials
{
/// The mended copy; "" when the bytes are no text. `broken_bytes` tells whether UTF-8 had to be mended.
std::string mended_sheet(std::string_view text, const std::string &file, Problems &problems,
                         bool &broken_bytes);
} // namespace solemech::materials
