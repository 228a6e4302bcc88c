// SPDX-License-Identifier: Apache-2.0
// Values of a page that a kind of rig fills: numbers at the top, line charts, captions. Texts are plain text
// for people, numbers are in the unit beside them; every number must be finite.
#pragma once

#include <string>
#include <vector>

namespace solemech::tools::rigs
{
/// One of the three numbers at the top.
struct Headline
{
  std::string name;  ///< "rebound"
  std::string value; ///< "262 mm", for several runs "262 / 325 mm"
  std::string note;  ///< "65 % of the drop height"
};

/// A line chart over something other than time.
struct ChartLine
{
  std::string         name;
  std::vector<double> x, y; ///< in the units of the labels
};
struct LineChart
{
  std::string            name, x_label, y_label;
  std::vector<ChartLine> lines;
  bool round = false; ///< x and y to one scale, rings round the origin: y ahead, x to the outer side
};
struct LineBlock
{
  std::string            heading, sentence;
  std::vector<LineChart> charts;
};

/// Words below the drawing of the moment, the loop, the pictures in motion and the energy account.
struct Captions
{
  std::string moment, loop, motion, energy;
};
} // namespace solemech::tools::rigs
