// SPDX-License-Identifier: Apache-2.0
// Settles the unknown numbers of a bench sheet on its readings: every parameter set becomes one run a bench,
// all of them in parallel and kept, so that a stopped settling goes on where it was.
#pragma once

#include "tools/answers/sheet/sheet.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// How well a library material takes the place of an unknown one.
struct MaterialFit
{
  std::string layer, name, title;
  double      misfit = 0; ///< root mean square over all readings used, in half bands
  std::string worst;      ///< reading that it misses most
};

struct SettledSheet
{
  settle::Settled    settled;
  std::vector<Probe> probes; ///< one an observation of `settled`: the readings first, then what is asked
  std::size_t        n_readings = 0;
  std::vector<MaterialFit> fits;  ///< per unknown material best first
  solver::Case             setup; ///< the settled case
};

/// Predictions of `probes`, one row a set of the unknowns; a stack that could not be run gives an empty row.
std::vector<std::vector<double>> predict_probes(const Sheet &sheet, const std::vector<Probe> &probes,
                                                const std::vector<std::vector<double>> &sets, Job &job);

/// A sheet without readings that count is not settled but predicted: the bands are those of what is assumed.
bool is_prediction(const Sheet &sheet);

/// @param candidates  library materials that may take the place of unknown ones
/// @param asked  predictions wanted beside the readings: their bands come out of `settled` as well
/// @throws Interrupted, and what settle::settle throws
SettledSheet settle_sheet(const Sheet &sheet, const std::vector<Probe> &asked, Job &job,
                          const std::vector<materials::Material> &candidates);

/// What is always asked: the rebound of the rig's own drop, and what each unknown foam gives back.
std::vector<Probe> questions(const Sheet &sheet);

/// Share of the energy put into a layer that it gave back [-], from the energy account of a run.
double returned_by(const solver::Result &result, const std::string &part);
} // namespace solemech::tools
