// SPDX-License-Identifier: Apache-2.0
#include "tools/language/shown_text.h"

#include <utf8.h>

#include <algorithm>

namespace solemech::materials
{
namespace
{
/// Code point of the sequence of `length` bytes, or the byte itself that is no UTF-8.
char32_t code_at(std::string_view text, std::size_t at, std::size_t length)
{
  auto begin = text.begin() + static_cast<std::ptrdiff_t>(at);
  return length == 0 ? static_cast<unsigned char>(*begin) : utf8::unchecked::next(begin);
}

bool steers(char32_t c, bool keep_lines)
{
  if (keep_lines && (c == '\n' || c == '\t' || c == '\r'))
    return false;
  return c < 0x20 || (c >= 0x7f && c < 0xa0) || (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
}
} // namespace

std::size_t valid_utf8(std::string_view text)
{
  return static_cast<std::size_t>(utf8::find_invalid(text.begin(), text.end()) - text.begin());
}

std::size_t utf8_length(std::string_view text, std::size_t at)
{
  constexpr std::size_t longest = 4;
  const auto            rest = text.substr(at, longest);
  if (valid_utf8(rest) == 0)
    return 0;
  auto end = rest.begin();
  utf8::unchecked::advance(end, 1);
  return static_cast<std::size_t>(end - rest.begin());
}

std::size_t characters(std::string_view text, std::size_t end)
{
  end = std::min(end, text.size());
  std::size_t n = 0;
  for (std::size_t at = 0; at < end; at += std::max<std::size_t>(1, utf8_length(text, at)))
    ++n;
  return n;
}

std::size_t first_steering(std::string_view text, bool keep_lines)
{
  for (std::size_t at = 0; at < text.size();)
  {
    const auto length = utf8_length(text, at);
    if (steers(code_at(text, at, length), keep_lines))
      return at;
    at += length == 0 ? 1 : length;
  }
  return std::string_view::npos;
}

std::string shown_text(std::string_view text, bool keep_lines)
{
  std::string shown;
  shown.reserve(text.size());
  for (std::size_t at = 0; at < text.size();)
  {
    const auto length = utf8_length(text, at);
    if (length == 0 || steers(code_at(text, at, length), keep_lines))
      shown += '?';
    else
      shown += text.substr(at, length);
    at += length == 0 ? 1 : length;
  }
  return shown;
}
} // namespace solemech::materials
