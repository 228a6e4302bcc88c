// SPDX-License-Identifier: Apache-2.0
// The measurements of a whole sole, as taken with callipers: plain numbers, no materials. Layers are listed
// from the foot side to the ground, as in a stack. `flaws` (sole_flaws.h) finds what cannot be built of them,
// SoleBody (sole_body.h) builds it. A sole is that of a left foot; a right one is its mirror image.
#pragma once

#include "geometry/sole/bottom_line.h"
#include "geometry/sole/outline.h"
#include "geometry/sole/plan_figure.h"
#include "geometry/sole/plan_region.h"

#include <array>
#include <optional>
#include <vector>

namespace solemech::geometry
{
struct OutlineShape
{
  double                 length = 0; ///< [m]
  HalfWidths             half_widths;
  std::vector<PlanPoint> trace; ///< points of the edge in order, instead of the half widths; else empty
  double                 ball_medial = 0, ball_lateral = 0; ///< x of the two ends of the ball line [m]
};

/// Where the ball line ends when it is not measured [share of the length].
inline constexpr double usual_ball_medial = 0.73, usual_ball_lateral = 0.64;

/// Where thickness is measured: heel edge, heel, waist, ball, toe tip. The ball is where the ball line
/// crosses the line heel centre - toe tip; the others lie at these shares of the length.
inline constexpr double heel_station = 0.16, waist_station = 0.35;
/// Zones of an inset: heel, waist, ball, toes; the last at this share of the length.
inline constexpr double toe_station = 0.90;

struct LayerShape
{
  double                    from = 0, to = 0; ///< x [m]; both 0: the whole length
  std::array<double, 5>     thickness{};      ///< at the five stations [m]
  std::array<double, 4>     inset{};          ///< from the edge of the sole, in the four zones [m]
  std::optional<HalfWidths> own;              ///< half widths of its own, instead of the inset
  std::vector<SlotShape>    slots;            ///< at most two
  int host = -1; ///< layer whose material fills what this one leaves free; < 0: the one above, of the
                 ///< first one the one below
};

/// A hollow in one layer.
struct PocketShape
{
  std::size_t layer = 0;
  PlanFigure  plan;
  double      floor = 0; ///< of the layer left under it [m]
  double      roof = 0;  ///< of the layer left over it [m]
};

/// A patch of the tread. Where there are pods, the lowest layer reaches the ground in them only.
struct PatchShape
{
  enum class Kind { pod, groove };
  Kind       kind = Kind::groove;
  PlanFigure plan;
  double     depth = 0;    ///< of the groove, or of the grooves round a pod [m]
  double     coverage = 1; ///< share of a pod with a fine pattern that is rubber down to the ground [-]
};

struct SoleShape
{
  OutlineShape             outline;
  BottomShape              bottom;
  std::vector<LayerShape>  layers; ///< foot side first
  std::vector<PocketShape> pockets;
  std::vector<PatchShape>  patches;
};

/// Least thickness of a layer, anywhere [m].
inline constexpr double      least_layer_thickness = 0.3e-3;
inline constexpr std::size_t most_sole_layers = 25, most_slots = 2;
} // namespace solemech::geometry
