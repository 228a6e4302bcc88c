// SPDX-License-Identifier: Apache-2.0
// "Did you mean": the nearest of some names by edit distance with swaps (F.J. Damerau, Comm. ACM 7, 1964).
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// The nearest name, a change of case counting half, or "" when none is near.
std::string nearest_name(std::string_view name, const std::vector<std::string> &names);
} // namespace solemech::materials
