// SPDX-License-Identifier: Apache-2.0
#include "tools/language/option_value.h"

#include "tools/language/addresses.h"
#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// Text in TOML's quotes. Characters outside ASCII go only into quotes (the parser does not bear them
/// elsewhere).
std::string quoted(const std::string &text)
{
  std::string result = "\"";
  for (const char c : text)
  {
    if (c == '"' || c == '\\')
      result += '\\';
    result += c;
  }
  return result + '"';
}

bool is_plain(const std::string &text)
{
  return std::all_of(text.begin(), text.end(), [](char c) {
    return static_cast<unsigned char>(c) >= 0x20 && static_cast<unsigned char>(c) < 0x7f;
  });
}
} // namespace

std::optional<toml::table> option_value(const PlacedText &value, const std::string &file, bool as_text)
{
  // Parsed behind so many line breaks and blanks that the node gets its place in the option.
  const auto breaks = static_cast<std::size_t>(std::max(value.line, 1) - 1);
  const auto blanks = static_cast<std::size_t>(std::max(value.column, 3) - 3);
  // No value has so many; the parser goes into each part of a key.
  if (std::count(value.text.begin(), value.text.end(), '.') > 30)
    return std::nullopt;
  const auto parsed = [&](const std::string &text) -> std::optional<toml::table> {
    try
    {
      auto table =
        toml::parse(fmt::format("{}v={}{}", std::string(breaks, '\n'), std::string(blanks, ' '), text), file);
      const auto *text_value = table["v"].as_string();
      if (table.size() != 1 ||
          (text_value && materials::first_steering(text_value->get()) != std::string::npos))
        return std::nullopt;
      toml::table holder;
      put(holder, value_key, *table.get("v"));
      return holder;
    }
    catch (const toml::parse_error &)
    {
      return std::nullopt;
    }
  };
  if (!as_text && is_plain(value.text))
    if (auto holder = parsed(value.text))
      return holder;
  return parsed(quoted(value.text));
}
} // namespace solemech::tools
