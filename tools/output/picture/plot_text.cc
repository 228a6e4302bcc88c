// SPDX-License-Identifier: Apache-2.0
#include "tools/output/picture/plot_text.h"

#include <fmt/format.h>

#include <iterator>

namespace solemech::tools::plot
{
LineLook line_look(std::size_t run)
{
  // Dark blue, burnt orange, green, violet: apart in lightness as well as in hue.
  constexpr LineLook looks[] = {{"#1f3a5f", "1"},
                                {"#c8601f", "(9,3)"},
                                {"#4f8a5b", "(2,2)"},
                                {"#8a5a9e", "(9,2,2,2)"},
                                {"#7a6a3a", "(5,2)"}};
  return looks[run % std::size(looks)];
}

std::string quoted(const std::string &text)
{
  std::string result = "'";
  for (const char c : text)
    if (c == '\'')
      result += "''";
    else
      result += static_cast<unsigned char>(c) < ' ' ? ' ' : c;
  return result + "'";
}

std::string twice(const std::string &name, int width, int height, const std::string &body)
{
  const std::string size = fmt::format("size {},{} background rgb '{}' noenhanced", width, height, paper);
  return fmt::format(
    "set terminal svg {} font 'DejaVu Sans,20' dashed\nset output 'pictures/{}.svg'\n{}unset output\n"
    "set terminal pngcairo {} font 'DejaVu Sans,15' dashed\nset output 'pictures/{}.png'\n{}unset "
    "output\n",
    size, name, body, size, name, body);
}

std::string begin(const std::string &title, const std::string &source)
{
  return fmt::format("reset\nset encoding utf8\nset title {} textcolor rgb '{}' font ',22'\n"
                     "set border 3 linecolor rgb '{}' linewidth 1.5\nset tics nomirror textcolor rgb '{}'\n"
                     "set grid linecolor rgb '{}' linetype 1 linewidth 1\nset key noautotitle\n"
                     "set label 999 {} at screen 0.99,0.018 right textcolor rgb '#6b7480' font ',12'\n"
                     "set xlabel textcolor rgb '{}'\nset ylabel textcolor rgb '{}'\nset bmargin 5\n",
                     quoted(title), ink, ink, ink, faint, quoted(source), ink, ink);
}

std::string data_block(const std::string &name, const std::vector<double> &x, const std::vector<double> &y)
{
  fmt::memory_buffer text;
  auto               out = std::back_inserter(text);
  fmt::format_to(out, "${} << EOD\n", name);
  for (std::size_t i = 0; i < x.size() && i < y.size(); ++i)
    fmt::format_to(out, "{:.6g} {:.6g}\n", x[i], y[i]);
  fmt::format_to(out, "EOD\n");
  return fmt::to_string(text);
}
} // namespace solemech::tools::plot
