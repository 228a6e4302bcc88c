// SPDX-License-Identifier: Apache-2.0
// The face of a lug over thousands of slides: slide, wear for as long as the pattern of the pressure lasts,
// draw anew, slide again. A jump takes the depths that the pressure at its end asks for, which is foreseen
// from the slide at its beginning: what is worn more gives way to its neighbours as the surface of a
// half-space would, E* q/2 of pressure for a wave of the number q (K.L. Johnson, Contact Mechanics, 13.2,
// from memory), and places that come down carry. With the pressure of the beginning instead, waves of the
// mesh's size would grow in any jump worth making. How long a jump may be follows from how far the slide
// after it differs from what was foreseen.
#pragma once

#include "geometry/worn_profile.h"
#include "solver/results/result.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::solver
{
/// What a place of the face loses.
struct WearLoss
{
  double x = 0;      ///< place on the unloaded lug across the bar [m]
  double volume = 0; ///< lost per way of slip and depth of bar [m2/m]
  double gap = 0;    ///< to the court while sliding; what touches has none [m]
  double spread =
    0; ///< over which the volume is shared out: a mesh tells no pressure finer than its faces [m]
};

/// A slide of one profile.
struct ProfileSlide
{
  bool        stands = true;      ///< false: the lug folds over or finds no balance; nothing is worn then
  std::string reason;             ///< why not
  std::vector<WearLoss> losses;   ///< in any order
  double                grip = 0; ///< along the heading [-]
  double                edge_pressure = 0; ///< [Pa]
  double                contact_share = 0; ///< [-]
  FaceLine              face;              ///< for pictures
};
using SlideOfProfile = std::function<ProfileSlide(const geometry::LugOutline &)>;

struct WearControl
{
  double depth = 0;          ///< mean over the face, at which it ends [m]
  double tolerance = 0;      ///< root mean square of what a jump may take wrongly [m]
  double first_jump = 0;     ///< mean depth of the first jump [m]
  double conforming = 0;     ///< k E*: how fast the pressure gives way to wear [-]
  bool   to_and_fro = false; ///< as often the other way: both directions wear alike
  int    greatest_jumps = 400;
};

/// After each jump.
struct WearState
{
  double            way = 0;      ///< of slip since the lug was fresh [m]
  double            depth = 0;    ///< mean over the face, as wide as it is by then [m]
  double            greatest = 0; ///< depth where it is greatest [m]
  double            lost = 0;     ///< section lost, from the profile [m2]
  double            asked = 0;    ///< section the slides asked for, summed up [m2]
  geometry::LugLine face;         ///< worn face; empty while fresh
  ProfileSlide      slide;        ///< on this face
};

struct WearHistory
{
  std::vector<WearState> states;       ///< the fresh lug first
  int                    repeated = 0; ///< jumps taken back because the pattern changed too much
  std::string            reason;       ///< why it ended before the wished depth; empty: it did not
};

/// @param on_state  called after each state; returns false to stop
/// @throws what `slide` throws; RunStopped when on_state asks to stop
WearHistory wear_down(const geometry::LugOutline &fresh, const SlideOfProfile &slide,
                      const WearControl                            &control,
                      const std::function<bool(const WearState &)> &on_state = {});
} // namespace solemech::solver
