// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cctype>
#include <string>

namespace solemech::tools
{
/// The text with its capitals of the Latin alphabet as small letters: for words that mean the same either
/// way.
inline std::string in_small_letters(std::string text)
{
  std::ranges::transform(text, text.begin(),
                         [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}
} // namespace solemech::tools
