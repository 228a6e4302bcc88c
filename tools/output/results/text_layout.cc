// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/text_layout.h"

#include "tools/language/shown_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace solemech::tools
{
std::size_t columns(const std::string &text)
{
  return materials::characters(text);
}

std::string pad_left(const std::string &text, std::size_t width)
{
  const std::size_t size = columns(text);
  return size < width ? std::string(width - size, ' ') + text : text;
}

std::string pad_right(const std::string &text, std::size_t width)
{
  const std::size_t size = columns(text);
  return size < width ? text + std::string(width - size, ' ') : text;
}

std::string wrapped(const std::string &text, std::size_t width, const std::string &indent)
{
  std::istringstream words(text);
  std::string        result, line, word;
  while (words >> word)
  {
    const bool fits = columns(line) + 1 + columns(word) <= width;
    if (!line.empty() && !fits)
    {
      result += line + "\n";
      line = indent + word;
    }
    else
      line += (line.empty() ? "" : " ") + word;
  }
  return result + line;
}

std::string bar(double share, std::size_t length, char fill)
{
  auto filled = static_cast<long>(std::lround(share * static_cast<double>(length)));
  if (share > 0.005)
    filled = std::max(filled, 1L);
  filled = std::clamp(filled, 0L, static_cast<long>(length));
  return std::string(static_cast<std::size_t>(filled), fill) +
         std::string(length - static_cast<std::size_t>(filled), '.');
}
} // namespace solemech::tools
