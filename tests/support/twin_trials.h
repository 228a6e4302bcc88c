// SPDX-License-Identifier: Apache-2.0
// Twin experiments: parameters drawn from their priors, readings made from them with noise of the stated
// doubts, and the model settled on those readings alone. Counts how often the truth lies in the 90 % bands,
// and how far answers lean.
#pragma once

#include "tools/study/settle.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::tests
{
struct TwinBench
{
  std::vector<settle::Parameter> parameters;
  std::vector<double>            doubts;           ///< of the readings [their unit]
  settle::Predict                predict;          ///< all readings of each parameter set
  bool                           relative = false; ///< doubts are shares of the readings
};

struct TwinCount
{
  int n_trials = 0, n_evaluations = 0, n_not_converged = 0;
  int n_parameters = 0, n_parameters_in = 0,
      n_sampled_in = 0; ///< truths, those in the linear and the sampled band
  int                 n_predictions = 0, n_predictions_in = 0, n_disagree = 0;
  std::vector<double> lean;       ///< of each parameter: mean of (answer - truth) in half bands, in ln
  std::vector<double> lean_noise; ///< what chance alone gives it: standard error of that mean

  double      parameters_share() const { return double(n_parameters_in) / n_parameters; }
  double      sampled_share() const { return double(n_sampled_in) / n_parameters; }
  double      predictions_share() const { return double(n_predictions_in) / n_predictions; }
  std::string text() const;
};

/// Equal seeds, equal counts. @param told  after each trial; may be empty
TwinCount twin_trials(const TwinBench &bench, int n_trials, unsigned seed,
                      const std::function<void(const TwinCount &)> &told = {});
} // namespace solemech::tests
