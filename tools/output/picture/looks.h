// SPDX-License-Identifier: Apache-2.0
// How materials look in section, on the page, in pictures and on worksheets: a tone and a hatch, so that
// colour is never the only difference. The name of a material alone decides, so that it looks the same
// everywhere; only where two that stand together would look alike the later name takes the next look.
#pragma once

#include "tools/output/results/parts.h"

#include <array>
#include <map>
#include <string>
#include <vector>

namespace solemech::tools
{
using Point = std::array<double, 2>;
using Polygon = std::vector<Point>;

struct Look
{
  int tone = -1, hatch = -1; ///< of the palette and of the hatches; -1: plain
};

class Looks
{
public:
  /// Of runs that are shown together.
  explicit Looks(const std::vector<const Run *> &runs);
  explicit Looks(const std::vector<Run> &runs);
  /// Of materials that are shown together: families by their names.
  explicit Looks(const std::map<std::string, std::string> &families);

  Look of(const Part &part) const;
  Look of_material(const std::string &name) const;

  /// One for each part of the run's picture, in its order.
  std::vector<Look> of_picture(const Run &run) const;

private:
  std::map<std::string, Look> by_material_;
};

/// Fill of a tone on paper; light enough for ink on top.
const char *tone_colour(int tone);

inline constexpr double hatch_tile = 8; ///< side of a tile, in the units of its lines

/// Lines of one tile of a hatch, y up; tile beside tile makes the hatch.
const std::vector<Polygon> &hatch_lines(int hatch);
} // namespace solemech::tools
