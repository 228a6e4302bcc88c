// SPDX-License-Identifier: Apache-2.0
// Settles the unknown numbers of bench sheets on their readings: every parameter set becomes one run a bench,
// all of them in parallel and kept, so that a stopped settling goes on where it was. Sheets that were read on
// one rod are settled together, in one least-squares problem in which the rod stands once; one sheet is the
// list of one.
#pragma once

#include "tools/answers/sheet/sheet.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// Library materials that are worth a run each in place of an unknown one; three of them are shown.
constexpr std::size_t most_candidates = 5;

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

/// Material of a layer or of the ring in it; nullptr: none is called so.
const materials::Material *material_named(const solver::Case &setup, const std::string &name);

/// Benches that runs are needed for.
std::vector<std::size_t> benches_run(const std::vector<Probe> &probes);

/// Predictions of `probes`, one row a set of the unknowns; a stack that could not be run gives an empty row.
std::vector<std::vector<double>> predict_probes(const Sheet &sheet, const std::vector<Probe> &probes,
                                                const std::vector<std::vector<double>> &sets, Job &job);

/// Library materials in the place of the unknown ones of a settled sheet, per layer best first.
std::vector<MaterialFit> material_fits(const Sheet &sheet, const SettledSheet &answer,
                                       const std::vector<materials::Material> &candidates, Job &job);

/// A sheet without readings that count is not settled but predicted: the bands are those of what is assumed.
bool is_prediction(const Sheet &sheet);

/// A sheet to settle.
struct SheetToSettle
{
  const Sheet       &sheet;
  std::vector<Probe> asked; ///< predictions wanted beside the readings: their bands come out as well
  std::string        name;  ///< "heel": before the names of its numbers in what is said of several sheets
};

struct SettledTogether
{
  settle::Settled           settled; ///< of all: their numbers, those of the rod once, and readings
  std::vector<SettledSheet> sheets;  ///< each as if it stood alone, with what the others say of it
  /// [sheet][unknown]: its place in settled.parameters.
  std::vector<std::vector<std::size_t>> places;
};

/// Numbers of the rod are one where the sheets give them the same value; the narrower of their bands counts,
/// one that a person wrote before one that is assumed.
/// @param sheets      at least one
/// @param candidates  library materials that may take the place of unknown ones
/// @throws Interrupted, and what settle::settle throws
SettledTogether settle_together(const std::vector<SheetToSettle> &sheets, Job &job,
                                const std::vector<materials::Material> &candidates);

/// The same of one sheet.
SettledSheet settle_sheet(const Sheet &sheet, const std::vector<Probe> &asked, Job &job,
                          const std::vector<materials::Material> &candidates);

/// What the settled stack reads under its own rig has one number and one ±: those of its run, not of the
/// coarser runs of the settling.
void take_from_run(const solver::Result &result, SettledSheet &answer);

/// What is always asked: the rebound of the rig's own drop, and what each unknown foam gives back.
std::vector<Probe> questions(const Sheet &sheet);

/// Share of the energy put into a layer that it gave back [-], from the energy account of a run.
double returned_by(const solver::Result &result, const std::string &part);
} // namespace solemech::tools
