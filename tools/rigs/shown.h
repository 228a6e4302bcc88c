// SPDX-License-Identifier: Apache-2.0
// Values of a page that a kind of rig fills: numbers at the top, line charts, captions. Texts are plain text
// for people, numbers are in the unit beside them; every number must be finite.
#pragma once

#include "tools/language/blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::rigs
{
struct Headline
{
  std::string              name, value, note;
  std::vector<std::string> values = {}; ///< of several runs that stand one by one, each whole
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
  bool                   round = false; ///< y ahead, x to the outer side
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

// Tables: a row is read as one line.
// clang-format off
constexpr auto block_of(const Headline *)
{
  using blocks::field;
  using S = Headline;
  return blocks::block<S>("Headline", "One of the three numbers at the top.",
    field(&S::name, "name", "\"rebound\""),
    field(&S::value, "value", "\"262 mm\", for several runs \"262 / 325 mm\""),
    field(&S::note, "note", "\"65 % of the drop height\""),
    field(&S::values, "values", "of several runs that stand one by one, each whole"));
}

constexpr auto block_of(const ChartLine *)
{
  using blocks::field;
  using S = ChartLine;
  return blocks::block<S>("ChartLine", "One line of a chart, in the units of its labels.",
    field(&S::name, "name"),
    field(&S::x, "x"),
    field(&S::y, "y"));
}

constexpr auto block_of(const LineChart *)
{
  using blocks::field;
  using S = LineChart;
  return blocks::block<S>("LineChart", "Lines over something other than time.",
    field(&S::name, "name"),
    field(&S::x_label, "xLabel"),
    field(&S::y_label, "yLabel"),
    field(&S::lines, "lines"),
    field(&S::round, "round", "x and y to one scale, y ahead, x to the outer side"));
}

constexpr auto block_of(const LineBlock *)
{
  using blocks::field;
  using S = LineBlock;
  return blocks::block<S>("LineBlock", "Charts of one kind of rig.",
    field(&S::heading, "heading"),
    field(&S::sentence, "sentence"),
    field(&S::charts, "charts"));
}
// clang-format on
} // namespace solemech::tools::rigs
