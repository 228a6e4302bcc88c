// SPDX-License-Identifier: Apache-2.0
// The runs of a trial: the stack before and after the change, both until a layer bottoms (by drop energy and
// by body mass), under a player, and over the range.
#pragma once

#include "solver/results/result.h"
#include "tools/answers/trial/limit_search.h"
#include "tools/answers/trial/loads.h"
#include "tools/answers/trial/trial_input.h"
#include "tools/study/job.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Where one stack bottoms.
struct Reserve
{
  std::optional<LimitSearch::Answer> energy;       ///< of the same drop rig [J]
  std::optional<LimitSearch::Answer> body_mass;    ///< under a step [kg]
  std::optional<TravelLeft>          under_player; ///< when one was given
};

/// One of the two sides of a trial.
struct TrialSide
{
  solver::Result result;
  Reserve        reserve;
};

struct TrialResult
{
  TrialSide                   now, changed;
  std::vector<solver::Result> range; ///< one a value of the range
};

/// Body masses between which the step is tried [kg].
constexpr double lightest_step = 30, heaviest_step = 130;

/// Drop energies tried: up to so many times the energy of the rig.
constexpr double most_energy = 20;

/// Relative tolerance of the energies and masses at which a stack bottoms.
constexpr double reserve_tolerance = 0.02;

/// Work of the runs of a trial, as Job::expect takes it: about so many, as searches go on until they are
/// done.
double cost_of(const TrialRequest &request);

/// @throws Interrupted, and what the solver throws of the stack when there is no other beside it
TrialResult solve_trial(const TrialInput &trial, Job &job);
} // namespace solemech::tools
