// SPDX-License-Identifier: Apache-2.0
// Slide of a lug over a court at a heading: the section is taken across the bar, where friction has the share
// cos(heading) of mu p; the share sin(heading) runs along the bar, from the same pressures. Grip along the
// heading is cos x in-plane + sin x axial. A bar is taken as stiff along itself. mu follows pressure, speed
// and temperature (materials/court_friction.h); the face keeps the temperature of the case.
#pragma once

#include "solver/resolution.h"
#include "solver/run.h"
#include "solver/slide_process.h"

namespace solemech::solver
{
/// A slide and what its surface felt at the end.
struct StudiedSlide
{
  Result       result;
  SlideOutcome outcome;
};

/// The account that counts.
inline Result &accounted(StudiedSlide &study)
{
  return study.result;
}

/// As run_slide.
StudiedSlide study_slide(const Case &input, const SlideRig &rig, const Resolution &resolution,
                         const RunOptions &options);

/// One slide at a given resolution; no error estimate. Forces and energies are per metre of bar. A lug that
/// folds over or a slide that does not become steady is a result with a warning. Throws RunFailed when the
/// court cannot be brought to touch, RunStopped, InvalidGeometry, InvalidParameter.
Result run_slide(const Case &input, const SlideRig &rig, const Resolution &resolution,
                 const RunOptions &options);
} // namespace solemech::solver
