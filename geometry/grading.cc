// SPDX-License-Identifier: Apache-2.0
#include "geometry/grading.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace solemech::geometry
{
namespace
{
// Numbers of the size field, relative to the smaller of stack height and striker radius.
constexpr double rim_size = 0.14;    // cells under the striker's rim
constexpr double rim_inside = 0.31;  // width of the fine zone inside the rim
constexpr double radial_slope = 0.4; // neighbours grow by at most exp(0.4) = 1.5
constexpr double top_size = 0.11;    // cells at the foot side
constexpr double depth_slope = 0.25;
constexpr double even_cells = 5; // cells over the height when the striker covers the plug
// A strip shall get cells of at most this share of its thickness at level 1; thin ones (board, plate, film, a
// rubber skin) bend and shear as one quadratic cell.
constexpr double thick_strip_share = 0.9;
constexpr double thin_strip_share = 2.2;
constexpr double thin_strip = 0.1; // of the stack height
constexpr double largest_aspect = 8;
// Next to the film of an air unit's side wall, in film thicknesses.
constexpr double film_neighbour = 3;

using SizeField = std::function<double(double)>;

// The part of an axis between two part boundaries.
struct Interval
{
  double begin, end;
  double largest_cell; // whatever the level [m]
};

struct Band
{
  double begin, end;
};

double distance_to(const Band &band, double x)
{
  return std::max({band.begin - x, x - band.end, 0.0});
}

// Positions that split an interval into equal shares of the integral of 1/cell; appends all but the first.
// The cell is size/level, but no larger than the interval allows.
void append_divided(std::vector<double> &lines, const Interval &interval, const SizeField &size, double level)
{
  constexpr unsigned  n_samples = 256;
  const double        step = (interval.end - interval.begin) / n_samples;
  std::vector<double> share(n_samples + 1, 0.0);
  for (unsigned i = 0; i < n_samples; ++i)
  {
    const double cell = size(interval.begin + (i + 0.5) * step) / level;
    share[i + 1] = share[i] + step / std::min(cell, interval.largest_cell);
  }

  const auto divided = [&](unsigned n) {
    std::vector<double> points;
    unsigned            i = 0;
    for (unsigned k = 1; k < n; ++k)
    {
      const double target = share.back() * k / n;
      while (share[i + 1] < target)
        ++i;
      points.push_back(interval.begin + step * (i + (target - share[i]) / (share[i + 1] - share[i])));
    }
    points.push_back(interval.end);
    return points;
  };
  const auto largest_cell = [&](const std::vector<double> &points) {
    double largest = 0, before = interval.begin;
    for (const double point : points)
    {
      largest = std::max(largest, point - before);
      before = point;
    }
    return largest;
  };

  unsigned n = std::max(1L, std::lround(share.back()));
  auto     points = divided(n);
  while (largest_cell(points) > interval.largest_cell * (1 + 1e-9))
    points = divided(++n);
  lines.insert(lines.end(), points.begin(), points.end());
}

std::vector<double> divided_axis(const std::vector<Interval> &intervals, const SizeField &size, double level)
{
  std::vector<double> lines{0.0};
  for (const Interval &interval : intervals)
    append_divided(lines, interval, size, level);
  return lines;
}

// Thinnest layer lying flat: every cell column must be narrow enough for it.
double thinnest_layer(const PlugOutline &outline)
{
  double thinnest = std::numeric_limits<double>::infinity();
  for (const Strip &strip : outline.strips)
    thinnest = std::min(thinnest, strip.chamber ? strip.chamber->film_thickness : strip.thickness);
  return thinnest;
}

double reference_length(const PlugOutline &outline)
{
  return std::min(height(outline), std::min(outline.tup_contact_radius, outline.radius));
}

bool covers_plug(const PlugOutline &outline)
{
  return outline.tup_contact_radius >= outline.radius;
}

SizeField radial_size(const PlugOutline &outline)
{
  std::vector<std::pair<Band, double>> film_walls; // where, thickness
  for (const Strip &strip : outline.strips)
    if (strip.chamber)
      film_walls.push_back(
        {{cavity(strip).outer_radius, strip.chamber->outer_radius}, strip.chamber->film_thickness});

  const double length = reference_length(outline);
  const double even = std::max(length / even_cells, outline.radius / 8);
  const double rim = outline.tup_contact_radius;
  const double inside = std::min(rim, std::max(rim_inside * length, outline.tup_edge_radius));
  const Band   fine{rim - inside, rim + std::min(outline.tup_edge_radius / 2, rim / 4)};
  const bool   refine_rim = !covers_plug(outline);

  return [=](double r) {
    double size = refine_rim ? rim_size * length + radial_slope * distance_to(fine, r) : even;
    for (const auto &[wall, thickness] : film_walls)
      size = std::min(size, film_neighbour * thickness + radial_slope * distance_to(wall, r));
    return size;
  };
}

// Strips cut at the film surfaces, from the ground up.
std::vector<Interval> height_intervals(const PlugOutline &outline)
{
  constexpr double      any = std::numeric_limits<double>::infinity();
  std::vector<Interval> intervals;
  double                z = 0;
  for (const Strip &strip : outline.strips)
  {
    const double top = z + strip.thickness;
    if (strip.chamber)
    {
      const Cavity hole = cavity(strip);
      // the film of the side wall stands in this interval
      const double tallest = largest_aspect * strip.chamber->film_thickness;
      intervals.push_back({z, z + hole.bottom, any});
      intervals.push_back({z + hole.bottom, z + hole.top, tallest});
      intervals.push_back({z + hole.top, top, any});
    }
    else
      intervals.push_back({z, top, any});
    z = top;
  }
  return intervals;
}

SizeField height_size(const PlugOutline &outline, const std::vector<Interval> &intervals)
{
  const double total = height(outline);
  const double length = reference_length(outline);
  const bool   even = covers_plug(outline);
  return [=](double z) {
    const auto   here = std::find_if(intervals.begin(), intervals.end() - 1,
                                     [&](const Interval &interval) { return z < interval.end; });
    const double thickness = here->end - here->begin;
    const double share = thickness < thin_strip * total ? thin_strip_share : thick_strip_share;
    const double size = even ? length / even_cells : top_size * length + depth_slope * (total - z);
    return std::min(size, share * thickness);
  };
}

std::vector<double> halved_axis(const std::vector<double> &lines)
{
  std::vector<double> fine;
  for (std::size_t i = 0; i + 1 < lines.size(); ++i)
  {
    fine.push_back(lines[i]);
    fine.push_back((lines[i] + lines[i + 1]) / 2);
  }
  fine.push_back(lines.back());
  return fine;
}
} // namespace

MeshSize::MeshSize(double level) : level_(level)
{
  if (!(level >= 0.5 && level <= 32))
    throw InvalidGeometry("mesh level", level, "", "0.5 to 32");
}

std::vector<double> part_radii(const PlugOutline &outline)
{
  std::vector<double> breaks{outline.radius};
  if (outline.wall_thickness > 0)
    breaks.push_back(outline.radius + outline.wall_thickness);
  for (const Strip &strip : outline.strips)
  {
    for (const Zone &zone : strip.zones)
      breaks.push_back(zone.outer_radius);
    if (strip.chamber)
    {
      breaks.push_back(cavity(strip).outer_radius);
      breaks.push_back(strip.chamber->outer_radius);
    }
  }
  std::sort(breaks.begin(), breaks.end());
  const double rounding = 1e-9 * outline.radius;
  breaks.erase(
    std::unique(breaks.begin(), breaks.end(), [&](double a, double b) { return b - a < rounding; }),
    breaks.end());
  return breaks;
}

GridLines graded_lines(const PlugOutline &outline, MeshSize size)
{
  check(outline);
  std::vector<Interval> columns;
  const double          widest = largest_aspect * thinnest_layer(outline);
  double                begin = 0;
  for (const double end : part_radii(outline))
  {
    columns.push_back({begin, end, widest});
    begin = end;
  }
  const std::vector<Interval> rows = height_intervals(outline);
  return {.r = divided_axis(columns, radial_size(outline), size.level()),
          .z = divided_axis(rows, height_size(outline, rows), size.level())};
}

GridLines halved(const GridLines &lines)
{
  return {.r = halved_axis(lines.r), .z = halved_axis(lines.z)};
}
} // namespace solemech::geometry
