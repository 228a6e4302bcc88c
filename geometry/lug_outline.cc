// SPDX-License-Identifier: Apache-2.0
#include "geometry/lug_outline.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
constexpr double pi = std::numbers::pi;
constexpr double steepest_draft = 30 * pi / 180;

void require_length(const char *name, double value, double least, double most)
{
  if (!(value >= least && value <= most))
    throw InvalidGeometry(name, value, in_mm(least) + " to " + in_mm(most));
}

/// Way from the sharp corner to where the arc begins, on both sides of a corner of `angle`.
double tangent_length(double radius, double angle)
{
  return radius / std::tan(angle / 2);
}

void check_worn_face(const LugOutline &outline)
{
  const auto &face = outline.worn_face;
  if (face.empty())
    return;
  if (face.size() < 2)
    throw InvalidGeometry("number of points of the worn face", static_cast<double>(face.size()), "",
                          "2 or more");
  for (std::size_t i = 0; i < face.size(); ++i)
  {
    const auto [x, z] = face[i];
    if (i > 0 && !(x > face[i - 1][0]))
      throw InvalidGeometry("place across the lug of a point of the worn face", x,
                            "more than that of the point before");
    if (!(z > outline.skin))
      throw InvalidGeometry("height of the worn face", z,
                            "more than " + in_mm(outline.skin) + ": the lug is worn off");
    if (z > surface_height_at(outline, x) + 1e-6 * outline.height)
      throw InvalidGeometry("height of the worn face", z, "at most that of the fresh lug there");
  }
}
} // namespace

void check(const LugOutline &outline)
{
  constexpr double largest = 0.1;
  require_length("lug width", outline.width, 0.2e-3, largest);
  require_length("lug height", outline.height, 0.2e-3, largest);
  require_length("skin under the lug", outline.skin, smallest_lug_radius, largest);
  require_length("lug spacing", outline.spacing, outline.width, largest);
  if (!(outline.draft >= 0 && outline.draft <= steepest_draft))
    throw InvalidGeometry("draft of the lug's walls", outline.draft * 180 / pi, "degrees", "0 to 30 degrees");
  const double face_angle = pi / 2 + outline.draft;
  // Half of the face and a share of the wall must stay for the arcs of both ends.
  const double most_edge = 0.45 * std::min(outline.width, outline.height) * std::tan(face_angle / 2);
  require_length("edge radius of the lug", outline.edge_radius, smallest_lug_radius, most_edge);
  const double most_fillet = 0.5 * outline.height * std::tan(face_angle / 2);
  require_length("fillet at the root of the lug", outline.fillet, smallest_lug_radius, most_fillet);
  const auto   wall = lug_wall(outline);
  const double gap = 0.5 * outline.spacing - wall.toe[0];
  if (!(gap > 0.02 * outline.spacing))
    throw InvalidGeometry("lug spacing", outline.spacing,
                          "more than " + in_mm(2.1 * wall.toe[0]) +
                            ", the width of the root with its fillets");
  if (!(wall.wall_top[1] > wall.wall_bottom[1]))
    throw InvalidGeometry("lug height", outline.height,
                          "more than what edge arc and fillet take of the wall");
  check_worn_face(outline);
}

LugWall lug_wall(const LugOutline &outline)
{
  const double angle = pi / 2 + outline.draft; // of the rubber at the edge, of the air at the root
  const double lean = std::tan(outline.draft), s = std::sin(outline.draft), c = std::cos(outline.draft);
  const double top = outline.skin + outline.height;
  const double edge = tangent_length(outline.edge_radius, angle),
               foot = tangent_length(outline.fillet, angle);
  const double root = 0.5 * outline.width + outline.height * lean; // sharp corner of wall and skin
  LugWall      wall;
  wall.toe = {root + foot, outline.skin};
  wall.fillet_center = {root + foot, outline.skin + outline.fillet};
  wall.fillet_from = -pi / 2;           // toe, straight below the centre
  wall.fillet_to = -pi + outline.draft; // towards the wall
  wall.wall_bottom = {root - foot * s, outline.skin + foot * c};
  wall.edge_center = {0.5 * outline.width - edge, top - outline.edge_radius};
  wall.edge_from = outline.draft; // outwards normal of the wall
  wall.edge_to = pi / 2;
  wall.wall_top = {0.5 * outline.width + edge * s, top - edge * c};
  return wall;
}

double half_width_at(const LugOutline &outline, double z)
{
  const auto   wall = lug_wall(outline);
  const double top = outline.skin + outline.height;
  if (z >= top)
    return z > top ? 0.0 : wall.edge_center[0];
  if (z <= outline.skin)
    return 0.5 * outline.spacing;
  if (z >= wall.wall_top[1])
  {
    const double up = z - wall.edge_center[1];
    return wall.edge_center[0] +
           std::sqrt(std::max(0.0, outline.edge_radius * outline.edge_radius - up * up));
  }
  if (z >= wall.wall_bottom[1])
    return 0.5 * outline.width + (top - z) * std::tan(outline.draft);
  const double down = z - wall.fillet_center[1];
  return wall.fillet_center[0] - std::sqrt(std::max(0.0, outline.fillet * outline.fillet - down * down));
}

double surface_height_at(const LugOutline &outline, double x)
{
  const auto wall = lug_wall(outline);
  x = std::abs(x);
  if (x <= wall.edge_center[0])
    return outline.skin + outline.height;
  if (x <= wall.wall_top[0])
  {
    const double out = x - wall.edge_center[0];
    return wall.edge_center[1] +
           std::sqrt(std::max(0.0, outline.edge_radius * outline.edge_radius - out * out));
  }
  if (x < wall.wall_bottom[0])
    return outline.skin + outline.height - (x - 0.5 * outline.width) / std::tan(outline.draft);
  if (x < wall.toe[0])
  {
    const double in = wall.fillet_center[0] - x;
    return wall.fillet_center[1] - std::sqrt(std::max(0.0, outline.fillet * outline.fillet - in * in));
  }
  return outline.skin;
}
} // namespace solemech::geometry
