// SPDX-License-Identifier: Apache-2.0
// Presses a lug on a court and slides it, without inertia, until the grip is steady. Shared by every rig that
// slides: one slide, maps over headings, wear over thousands of slides.
#pragma once

#include "solver/models/lug_model.h"
#include "solver/time/generalised_alpha.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::solver
{
struct SlideLoad
{
  double pressure = 0;       ///< nominal: force over the fresh face [Pa]
  double speed = 0;          ///< of the slide [m/s]
  double distance = 0;       ///< greatest way of the court; ends before when the grip is steady for long [m]
  double press_time = 20e-3; ///< [s]
  bool   to_the_end = false; ///< slides the whole way even when steady
  double step_share = 1;     ///< of the regular steps [-]
  double newton_tolerance = 1; ///< of the residuals, relative to the default; smaller is closer
};

/// What ends a slide.
enum class SlideEnd {
  steady,      ///< grip and wear pattern no longer change
  way_is_over, ///< still changing at the end of the way
  folded_over, ///< the leading wall lies on the court
  no_balance   ///< no equilibrium was found beyond this way
};

/// Recorded after each step.
struct SlideMoment
{
  double time = 0;          ///< since the first touch [s]
  double way = 0;           ///< of the court [m]
  double pressure = 0;      ///< nominal [Pa]
  double shear = 0;         ///< nominal [Pa]
  double grip = 0;          ///< shear over normal force [-]
  double sink = 0;          ///< of the court since first touch [m]
  double contact_share = 0; ///< touching length over width of the fresh face [-]
  double deflection = 0;    ///< of the lug's face along the court's motion, mean [m]
  double offset =
    0; ///< of the normal force from the middle of the deflected face, along the court's motion [m]
  double friction_work = 0; ///< so far, over the fresh face [J/m2]
};

struct SlideOutcome
{
  SlideEnd                       end = SlideEnd::way_is_over;
  std::string                    reason; ///< in words, where the slide did not become steady
  std::vector<SlideMoment>       moments;
  std::vector<SlidingPointState> surface;          ///< at the end; wear integrals over the steady part
  double                         steady_way = 0;   ///< of the court in the steady part [m]
  double                         grip = 0;         ///< mean over the steady part, or the last value [-]
  double                         wall_contact = 0; ///< length of the leading wall lying on the court [m]
};

/// @param on_step  called after pressing (way 0) and after every step; returns false to stop
/// @throws RunStopped when on_step asks to stop
SlideOutcome slide(LugModel &model, TimeIntegrator &integrator, const SlideLoad &load,
                   const std::function<bool(const SlideMoment &)> &on_step = {});

/// Quasi-static integrator fit for a sliding lug, started; it books what each part leaves open where wanted.
TimeIntegrator sliding_integrator(LugModel &model, OpenParts *open_parts = nullptr);

/// Length over which pressure on a face is a mean: that at a sharp corner and at each face of the mesh has no
/// limit on refinement [m].
constexpr double edge_window = 0.25e-3;

/// The face of the lug from left to right and what presses on it, mean over `edge_window`; walls are left
/// out.
FaceLine face_line(const LugModel &model, const std::vector<SlidingPointState> &points);

/// Greatest mean pressure over a window along the reference surface [Pa]; points as SlidingContact gives
/// them.
double windowed_peak(const std::vector<SlidingPointState> &points, double window);
} // namespace solemech::solver
