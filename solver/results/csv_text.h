// SPDX-License-Identifier: Apache-2.0
// Texts on their way into a CSV file (RFC 4180). Numbers are written by us and need nothing.
#pragma once

#include <string>
#include <string_view>

namespace solemech::solver
{
/// The text as one field: in quotes, those inside of it doubled; nothing for no text. Texts come from sheets
/// of others too, and a spreadsheet would run one that begins like a formula: such a one gets an apostrophe
/// in front.
inline std::string csv_text(std::string_view text)
{
  if (text.empty())
    return {};
  std::string field = "\"";
  if (std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
    field += '\'';
  for (const char c : text)
    field += c == '"' ? std::string("\"\"") : std::string(1, c);
  return field + '"';
}
} // namespace solemech::solver
