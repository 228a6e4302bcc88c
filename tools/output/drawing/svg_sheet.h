// SPDX-License-Identifier: Apache-2.0
// A sheet of paper as SVG 1.1, one unit a millimetre: shapes in the look of a material, lines, texts that
// stay readable on hatches, dimensions. Frames place a view on it, y upwards.
#pragma once

#include "tools/output/picture/looks.h"

#include <string>
#include <string_view>

namespace solemech::tools
{
/// Where the origin of a view lies on the sheet [mm].
struct Frame
{
  double x = 0, y = 0;
};

class SvgSheet
{
public:
  struct Line
  {
    double           width = 0.25; ///< [mm]
    std::string_view dashes = "";  ///< lengths of strokes and gaps [mm]
    bool             faint = false;
  };
  enum class Anchor { start, middle, end };

  /// In the look of a material; with `edge` a line round it.
  void area(const Frame &frame, const Polygon &outline, const Look &look, bool edge = true);
  /// Nothing inside: the colour of air or of the paper.
  void hollow(const Frame &frame, const Polygon &outline, bool of_paper, const Line &line);
  void line(const Frame &frame, const Polygon &points, const Line &line);
  void text(const Frame &frame, const Point &at, const std::string &words, Anchor anchor = Anchor::start,
            double size = 3.2, bool bold = false);
  /// A length between two points with its value, which stands beside its middle.
  void dimension(const Frame &frame, const Point &from, const Point &to, const std::string &value);

  /// The whole drawing.
  std::string finished(double width, double height, const std::string &title, const std::string &mark) const;

private:
  std::string fill(const Look &look);

  std::string                                body_, patterns_;
  std::map<std::pair<int, int>, std::string> names_; ///< of the patterns of looks
};

/// Text as XML takes it.
std::string escaped(std::string_view text);
} // namespace solemech::tools
