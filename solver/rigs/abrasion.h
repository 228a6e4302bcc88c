// SPDX-License-Identifier: Apache-2.0
// Abrasion benches: a sleeve on a rotary tool held on a piece of layers, and the drum of ISO 4649. Volume
// lost is k F s (Archard); k of a rubber on this abrasive follows from that of the reference rubber
// (materials/abrasion_bench.h), that of anything else is given with its layer. No elements: the piece stands
// still, only its outline goes.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

namespace solemech::solver
{
/// Depth over time with the band of the abrasive, what wears through, and for the sleeve how warm the face
/// gets. Throws InvalidParameter for a layer whose loss on the abrasive is not known, or a tool that does not
/// turn or press.
Result run_abrasion(const Case &input, const AbrasionRig &rig);

/// Greatest rise [K] of a face that is heated with `flux` [W/m2] for `time` [s] and ground away at
/// `recession` [m/s]: the lesser of the half-space under constant flux (Carslaw & Jaeger) and of the steady
/// receding face, whose debris takes all the heat, q/(rho c u). Heat flows straight down, so either is an
/// upper bound.
double ground_face_rise(const materials::HeatProperties &piece, double flux, double time, double recession);
} // namespace solemech::solver
