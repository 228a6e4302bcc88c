// SPDX-License-Identifier: Apache-2.0
// Stories of the report as one text.
#pragma once

#include <string>
#include <vector>

namespace solemech::tests
{
inline std::string told(const std::vector<std::string> &paragraphs)
{
  std::string text;
  for (const auto &paragraph : paragraphs)
    text += paragraph + "\n";
  return text;
}
} // namespace solemech::tests
