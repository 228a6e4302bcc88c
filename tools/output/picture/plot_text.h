// SPDX-License-Identifier: Apache-2.0
// Building blocks of a gnuplot script: the look shared by all pictures, quoting, inline data.
#pragma once

#include <string>
#include <vector>

namespace solemech::tools::plot
{
constexpr const char *paper = "#fbf8f1", *ink = "#26323e", *faint = "#d8d1c2";

/// Line of a run: colour, dash and width stay apart without colour vision and in grey print.
struct LineLook
{
  const char *colour;
  const char *dash; ///< gnuplot dash type
};
LineLook line_look(std::size_t run);

/// A text as gnuplot reads it literally, quotes included.
std::string quoted(const std::string &text);

/// Opens a picture in both forms: `body` is written once with each output. Sizes in pixels of the PNG.
std::string twice(const std::string &name, int width, int height, const std::string &body);

/// Settings that every picture starts from: colours, fonts, no enhanced text mark-up, the source line.
std::string begin(const std::string &title, const std::string &source);

/// `$name << EOD ... EOD` of x, y columns.
std::string data_block(const std::string &name, const std::vector<double> &x, const std::vector<double> &y);
} // namespace solemech::tools::plot
