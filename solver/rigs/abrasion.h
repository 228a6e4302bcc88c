// SPDX-License-Identifier: Apache-2.0
// Abrasion benches: a sleeve on a rotary tool held on a piece of layers, and the drum of ISO 4649. Volume
// lost is k F s (Archard); k of a rubber on this abrasive follows from that of the reference rubber
// (materials/abrasion_bench.h), that of anything else is given with its layer. No elements: the piece stands
// still, only its outline goes.
#pragma once

#include "materials/abrasion_bench.h"
#include "materials/contact_heat.h"
#include "solver/tup.h"

#include <string>

namespace solemech::solver
{
struct Case;
struct Resolution;
struct Result;
struct RunOptions;

/// Abrasive held on a piece for some time. Layers of its case: from the abrasive inwards.
enum class AbrasionTool { sleeve, drum };
struct AbrasionRig
{
  Tup                   tup; ///< as wide as the sleeve or the piece
  AbrasionTool          tool = AbrasionTool::sleeve;
  materials::RotaryTool sleeve;
  materials::DrumBench  drum;
  double                seconds = 0;             ///< that the sleeve is held [s]; the drum has its way
  std::string           reference;               ///< rubber whose loss on this abrasive is known
  double                reference_modulus = 0;   ///< Young's modulus of that one [Pa]
  double                coefficient = 0;         ///< of that one: volume over force and way [1/Pa]
  double                lowest = 0, highest = 0; ///< band that it is known to [1/Pa]
  double                friction = 1;            ///< of the piece on the abrasive [-]
  double                heat_share = 0.5;        ///< of the heat, that goes into the piece [-]
  double                conductivity = 0, specific_heat = 0; ///< of the piece [W/(m K)], [J/(kg K)]
  double                found_depth = 0; ///< on a bench, at the same settings [m]; 0: none was found
  double                mass_lost = 0,
         cloth_loss = 0; ///< of the piece and of the reference rubber of the standard [kg]; 0: none
};

/// Depth over time with the band of the abrasive, what wears through, and for the sleeve how warm the face
/// gets. Throws InvalidParameter for a layer whose loss on the abrasive is not known, or a tool that does not
/// turn or press.
/// A bench without elements has no resolution.
Result run_rig(const Case &input, const AbrasionRig &rig, const Resolution &, const RunOptions &);

/// Greatest rise [K] of a face that is heated with `flux` [W/m2] for `time` [s] and ground away at
/// `recession` [m/s]: the lesser of the half-space under constant flux (Carslaw & Jaeger) and of the steady
/// receding face, whose debris takes all the heat, q/(rho c u). Heat flows straight down, so either is an
/// upper bound.
double ground_face_rise(const materials::HeatProperties &piece, double flux, double time, double recession);
} // namespace solemech::solver
