// SPDX-License-Identifier: Apache-2.0
// "Did you mean": the nearest of some names by edit distance with swaps (F.J. Damerau, Comm. ACM 7, 1964).
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// The nearest name, a change of case counting half, or "" when none is near. Names of as many words (joined
/// by -, _ or blanks) must be near word by word: "steel-plate" is not meant to be "tpu-plate".
std::string nearest_name(std::string_view name, const std::vector<std::string> &names);
} // namespace solemech::materials
