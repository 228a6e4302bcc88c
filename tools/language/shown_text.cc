// SPDX-License-Identifier: Apache-2.0
#include "tools/language/shown_text.h"

namespace solemech::materials
{
namespace
{
/// Of the character that begins at `at` and is so many bytes long; 0: a byte that is no UTF-8.
bool steers(std::string_view text, std::size_t at, std::size_t length, bool keep_lines)
{
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  const auto first = byte(0);
  if (length <= 1)
    return first < 0x20 ? !keep_lines || (first != '\n' && first != '\t' && first != '\r')
                        : first == 0x7f || (length == 0 && first < 0xa0);
  if (length == 2)
    return first == 0xc2 && byte(1) < 0xa0; // U+0080 to U+009F
  if (length == 3 && first == 0xe2)
    return (byte(1) == 0x80 && byte(2) >= 0xaa && byte(2) <= 0xae) || // U+202A to U+202E
           (byte(1) == 0x81 && byte(2) >= 0xa6 && byte(2) <= 0xa9);   // U+2066 to U+2069
  return false;
}
} // namespace

std::size_t utf8_length(std::string_view text, std::size_t at)
{
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : static_cast<unsigned char>(0);
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xc0) == 0x80; };
  const auto first = byte(at);
  if (first < 0x80)
    return 1;
  if (first >= 0xc2 && first < 0xe0)
    return follows(at + 1) ? 2 : 0;
  if (first >= 0xe0 && first < 0xf0)
  {
    if (!follows(at + 1) || !follows(at + 2) || (first == 0xe0 && byte(at + 1) < 0xa0) ||
        (first == 0xed && byte(at + 1) >= 0xa0))
      return 0;
    return 3;
  }
  if (first >= 0xf0 && first < 0xf5)
  {
    if (!follows(at + 1) || !follows(at + 2) || !follows(at + 3) || (first == 0xf0 && byte(at + 1) < 0x90) ||
        (first == 0xf4 && byte(at + 1) >= 0x90))
      return 0;
    return 4;
  }
  return 0;
}

std::size_t first_steering(std::string_view text, bool keep_lines)
{
  for (std::size_t at = 0; at < text.size();)
  {
    const auto length = utf8_length(text, at);
    if (steers(text, at, length, keep_lines))
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
    if (length == 0 || steers(text, at, length, keep_lines))
      shown += '?';
    else
      shown += text.substr(at, length);
    at += length == 0 ? 1 : length;
  }
  return shown;
}
} // namespace solemech::materials
