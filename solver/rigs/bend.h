// SPDX-License-Identifier: Apache-2.0
// Three-point bend of a long section: two rollers under the outsole, a nose from above halfway between them,
// all frictionless and over the full width. The nose grips the sole where it comes down, as friction does on
// a bench, so that the sole does not slide off; what that takes is recorded. Supports stand where they touch
// the sole unbent.
#pragma once

#include "solver/models/section_model.h"
#include "solver/resolution.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::solver
{
/// Rollers, span and travel as footwear laboratories bend forefeet (Roy & Stefanyshyn 2006, Med. Sci. Sports
/// Exerc. 38, from memory).
struct BendRig
{
  double              centre = 0;   ///< of the nose along the foot: the ball line [m]
  double              span = 80e-3; ///< between the supports [m]
  double              support_radius = 5e-3, nose_radius = 5e-3; ///< [m]
  double              preload = 2; ///< on the nose, where travel counts as zero; 0: at touch [N]
  std::vector<double> force_at{2.5e-3, 5e-3, 7.5e-3}; ///< travels at which the force is read, rising [m]
  double              secant_from = 5e-3, secant_to = 7e-3; ///< of the stiffness, travels [m]
  double              speed = 7.5e-3;                       ///< of the nose [m/s]
  std::string         plate = {}; ///< part whose bending is read; empty: the lower face
};

struct BendOutcome
{
  Result                record;    ///< curves and ledger; not complete where the bench stopped early
  double                zero = 0;  ///< travel from the first touch to the preload [m]
  std::vector<double>   forces;    ///< at the travels asked for, as far as they were reached [N]
  std::optional<double> stiffness; ///< secant [N/m]
  /// At the end of the travel: what the nose, the supports and the sole between nose and plate give way
  /// beside what the plate bends, over the travel [-].
  std::optional<double> indentation;
};

/// One bend; no error estimate. Throws std::invalid_argument for a rig that does not fit the section.
BendOutcome run_bend(const LongSection &section, const Case &surroundings, const BendRig &rig,
                     const Resolution &resolution);
} // namespace solemech::solver
