// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_grid.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::geometry::plan
{
namespace
{
constexpr unsigned outline_rail = 0;

/// Places of the lines from side to side, and how cells are cut along them.
struct Layout
{
  std::vector<CrossLine> lines;
  std::vector<bool>      asked;
  unsigned               n_rim, n_across;

  unsigned n_lines() const { return static_cast<unsigned>(lines.size()); }
};

Layout lay_out(const Outline &outline, const PlanSizes &sizes)
{
  const double widest = outline.widest(), span = outline.x_most() - outline.x_least();
  Layout       layout;
  layout.n_rim = sizes.n_rim;
  layout.n_across =
    std::max(2 * sizes.n_rim + 2, static_cast<unsigned>(std::ceil(widest / sizes.across - 1e-9)));
  const double end = std::min(sizes.n_rim * widest / layout.n_across, 0.2 * span);

  std::vector<CrossLine> stops{{outline.x_least() + end, outline.x_least() + end}};
  auto                   asked = sizes.lines;
  std::sort(asked.begin(), asked.end(),
            [](const CrossLine &a, const CrossLine &b) { return a.low + a.high < b.low + b.high; });
  stops.insert(stops.end(), asked.begin(), asked.end());
  stops.push_back({outline.x_most() - end, outline.x_most() - end});
  for (std::size_t i = 1; i < stops.size(); ++i)
    if (!(std::min(stops[i].low - stops[i - 1].low, stops[i].high - stops[i - 1].high) > 1e-3))
      throw InvalidGeometry("line of the mesh at", 0.5 * (stops[i].low + stops[i].high),
                            "1 mm and more ahead of the line before it, and " + in_mm(end) +
                              " and more away from heel and toe tip");

  layout.lines = {stops.front()}, layout.asked = {false};
  for (std::size_t i = 1; i < stops.size(); ++i)
  {
    const double from = 0.5 * (stops[i - 1].low + stops[i - 1].high);
    const double to = 0.5 * (stops[i].low + stops[i].high);
    for (const double x : graded(from, to, sizes.along, sizes.finer))
    {
      const double share = (x - from) / (to - from);
      if (share > 0)
        layout.lines.push_back({stops[i - 1].low + share * (stops[i].low - stops[i - 1].low),
                                stops[i - 1].high + share * (stops[i].high - stops[i - 1].high)}),
          layout.asked.push_back(share == 1 && i + 1 < stops.size());
    }
  }
  return layout;
}

/// Collects nodes and cells; nodes by their place in a cross-shaped grid: rim rows lie beyond the first and
/// last line as well, and where two arms of the cross meet their edges are one.
class SoleSketch
{
public:
  SoleSketch(const Outline &outline, const Layout &layout)
    : outline_(outline), layout_(layout), n_x_(layout.n_lines() + 2 * layout.n_rim),
      n_y_(layout.n_across + 1), at_(n_x_ * n_y_, none)
  {
    sketch_.rails.push_back([outline](double place) { return outline.at(place); });
    for (unsigned i = 0; i < layout.n_lines(); ++i)
      add_line(i);
    add_end(false);
    add_end(true);
    const unsigned n_rim = layout.n_rim;
    add_cells(n_rim, n_x_ - n_rim - 1, 0, n_y_ - 1);
    add_cells(0, n_rim, n_rim, n_y_ - 1 - n_rim);
    add_cells(n_x_ - 1 - n_rim, n_x_ - 1, n_rim, n_y_ - 1 - n_rim);
    want_present_sides(sketch_);
  }

  Sketch take() { return std::move(sketch_); }

private:
  static constexpr unsigned none = static_cast<unsigned>(-1);

  const Outline        &outline_;
  const Layout         &layout_;
  unsigned              n_x_, n_y_;
  std::vector<unsigned> at_;
  Sketch                sketch_;

  unsigned &at(unsigned i, unsigned j) { return at_[i * n_y_ + j]; }

  unsigned add(const Node &node)
  {
    sketch_.nodes.push_back(node);
    return static_cast<unsigned>(sketch_.nodes.size()) - 1;
  }

  Node on_outline(double place) { return {outline_.at(place), outline_rail, place, false}; }

  /// Where the corner of the core is joined to the outline: half way to the end along the foot.
  double corner_place(unsigned line, bool low) const
  {
    const double end = line == 0 ? outline_.x_least() : outline_.x_most();
    const double x = 0.5 * (end + layout_.lines[line].low);
    return low ? outline_.low_place(x) : outline_.high_place(x);
  }

  void add_line(unsigned line)
  {
    const auto    &ends = layout_.lines[line];
    const bool     is_end = line == 0 || line + 1 == layout_.n_lines();
    const bool     asked = layout_.asked[line];
    const double   low = outline_.low_place(ends.low), high = outline_.high_place(ends.high);
    const auto     from = outline_.at(low), to = outline_.at(high);
    const unsigned n_rim = layout_.n_rim, n = layout_.n_across, column = line + n_rim;
    const double   share_of_rim = static_cast<double>(n_rim) / n;
    Node           first = on_outline(is_end ? corner_place(line, true) : low);
    Node           last = on_outline(is_end ? corner_place(line, false) : high);
    first.fixed = last.fixed = asked;
    if (asked)
      sketch_.rails.push_back([from, to](double share) { return between(from, to, share); });
    const auto rail = static_cast<unsigned>(sketch_.rails.size()) - 1;
    for (unsigned j = 0; j <= n; ++j)
    {
      const double share = static_cast<double>(j) / n;
      Node         node{between(from, to, share), asked ? rail : no_rail, share, false};
      if (j == 0 || j == n)
        node = j == 0 ? first : last;
      else if (is_end && j < n_rim)
        node.at = between(first.at, between(from, to, share_of_rim), static_cast<double>(j) / n_rim);
      else if (is_end && j > n - n_rim)
        node.at = between(last.at, between(from, to, 1 - share_of_rim), static_cast<double>(n - j) / n_rim);
      at(column, j) = add(node);
    }
  }

  /// Rows of rim round the heel or the toe.
  void add_end(bool toe)
  {
    const unsigned n_rim = layout_.n_rim, n = layout_.n_across;
    const unsigned line = toe ? layout_.n_lines() - 1 : 0, column = line + n_rim;
    // round the toe on from the low side, round the heel back from it
    const double low = corner_place(line, true) + (toe ? 0 : 1), high = corner_place(line, false);
    for (unsigned row = 1; row <= n_rim; ++row) // from the core outwards
    {
      const unsigned out = toe ? column + row : column - row;
      at(out, n_rim) = at(column, n_rim - row);
      at(out, n - n_rim) = at(column, n - n_rim + row);
      for (unsigned j = n_rim + 1; j < n - n_rim; ++j)
      {
        const double share = static_cast<double>(j - n_rim) / (n - 2 * n_rim);
        const double place =
          toe ? outline_.on_the_way(low, high, share) : outline_.on_the_way(high, low, 1 - share);
        Node node = on_outline(place);
        if (row < n_rim)
          node = {between(sketch_.nodes[at(column, j)].at, node.at, static_cast<double>(row) / n_rim)};
        at(out, j) = add(node);
      }
    }
  }

  void add_cells(unsigned i_from, unsigned i_to, unsigned j_from, unsigned j_to)
  {
    for (unsigned i = i_from; i < i_to; ++i)
      for (unsigned j = j_from; j < j_to; ++j)
        sketch_.cells.push_back({{at(i, j), at(i + 1, j), at(i, j + 1), at(i + 1, j + 1)}});
  }
};

void require_increasing(const std::vector<double> &lines, const char *axis)
{
  if (lines.size() < 2 ||
      std::adjacent_find(lines.begin(), lines.end(), std::greater_equal<>()) != lines.end())
    throw std::invalid_argument(std::string("mesh lines in ") + axis + " must increase");
}
} // namespace

std::vector<double> graded(double from, double to, double size, const std::vector<FinerStretch> &finer)
{
  const auto size_at = [&](double x) {
    double least = size;
    for (const auto &stretch : finer)
      least = std::min(least, stretch.size + 0.4 * std::max({stretch.from - x, x - stretch.to, 0.0}));
    return least;
  };
  // cells are counted along the way, then spread evenly over that count
  constexpr unsigned  n_steps = 1000;
  std::vector<double> counted{0};
  for (unsigned i = 0; i < n_steps; ++i)
    counted.push_back(counted.back() +
                      (to - from) / n_steps / size_at(from + (i + 0.5) * (to - from) / n_steps));
  const auto          n_cells = std::max(1u, static_cast<unsigned>(std::ceil(counted.back() - 1e-6)));
  std::vector<double> places{from};
  for (unsigned k = 1; k < n_cells; ++k)
  {
    const double wanted = counted.back() * k / n_cells;
    const auto   next = std::upper_bound(counted.begin(), counted.end(), wanted);
    const double within = (wanted - *(next - 1)) / (*next - *(next - 1));
    places.push_back(from +
                     (to - from) * (static_cast<double>(next - 1 - counted.begin()) + within) / n_steps);
  }
  places.push_back(to);
  return places;
}

Sketch sketch_of_sole(const Outline &outline, const PlanSizes &sizes)
{
  return SoleSketch(outline, lay_out(outline, sizes)).take();
}

Sketch sketch_of_rectangle(const std::vector<double> &x, const std::vector<double> &y)
{
  require_increasing(x, "x");
  require_increasing(y, "y");
  Sketch sketch;
  // the four sides as rails, low, high, heel, toe; parameters are places along them
  for (const double side : {y.front(), y.back()})
    sketch.rails.push_back([=](double place) { return PlanPoint{place, side}; });
  for (const double side : {x.front(), x.back()})
    sketch.rails.push_back([=](double place) { return PlanPoint{side, place}; });
  for (unsigned j = 0; j < y.size(); ++j)
    for (unsigned i = 0; i < x.size(); ++i)
    {
      const bool on_low = j == 0, on_high = j + 1 == y.size(), at_heel = i == 0, at_toe = i + 1 == x.size();
      Node       node{.at = {x[i], y[j]}};
      if (on_low || on_high)
        node.rail = on_low ? 0 : 1, node.place = x[i];
      if (at_heel || at_toe)
        node.fixed = on_low || on_high, node.rail = at_heel ? 2 : 3, node.place = y[j];
      sketch.nodes.push_back(node);
    }
  const auto n = static_cast<unsigned>(x.size());
  for (unsigned j = 0; j + 1 < y.size(); ++j)
    for (unsigned i = 0; i + 1 < n; ++i)
      sketch.cells.push_back({{j * n + i, j * n + i + 1, (j + 1) * n + i, (j + 1) * n + i + 1}});
  want_present_sides(sketch);
  return sketch;
}
} // namespace solemech::geometry::plan
