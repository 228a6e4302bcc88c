// SPDX-License-Identifier: Apache-2.0
// Settles a model on readings: finds the parameters that fit readings and prior knowledge best, each weighed
// by its doubt, and says how far the readings narrow them, which readings fit and which contradict each
// other.
//
// Least squares in u = ln(parameter): sum_i rho(r_i^2) + sum_k ((u_k - ln median_k) / spread_k)^2, r_i =
// (predicted - reading) / doubt; rho grows as a logarithm beyond `robust_at` doubts, so that one wild reading
// pulls no longer. Gauss-Newton steps with a trust region and bounds (Ceres); derivatives from perturbed
// runs, asked for in batches. Bands hold 90 %, from the linearised model (Gauss), checked by sampling a
// quadratic model of the predictions.
#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

namespace solemech::settle
{
/// A number of the model that is not known: log-normal before the readings, positive, kept between two
/// limits.
struct Parameter
{
  std::string name;                    ///< for people: "core modulus"
  double      median = 1;              ///< before the readings [unit of the parameter]
  double      spread = 1;              ///< standard deviation of ln(parameter) before the readings
  double      lowest = 0, highest = 0; ///< limits [unit of the parameter]
  /// Known well enough already, such as a thickness by callipers: its influence is taken once, before any
  /// reading, and carried along; it is not told as open.
  bool minor = false;
  /// Numbers of one part of a problem, such as one of two stacks; 0: of the whole. Runs that look round the
  /// settled values move the numbers of one part at a time, so that they leave the predictions of the others
  /// alone.
  int part = 0;
  /// How people read a value of it; empty: the bare number.
  std::function<std::string(double)> shown = {};
};

/// What a reading says: a value, or that the true value is at least this much ("wore through").
enum class Meaning { value, at_least };

/// One reading, or the mean of repeated ones.
struct Observation
{
  std::string name;
  double      value = 0;
  double      doubt = 0; ///< one standard deviation of `value`, same unit
  Meaning     meaning = Meaning::value;
  bool        held_out = false; ///< predicted and judged, never used to settle
  bool by_ratio = false; ///< compare ln(predicted / value) with doubt / value; for readings that span decades
  std::function<std::string(double)> shown = {}; ///< how people read a value of it; empty: the bare number
};

/// A value as people read it.
std::string shown(const std::function<std::string(double)> &how, double value);

/// All predictions for many parameter sets at once, one row a set, one entry an observation in their order;
/// the caller runs them in parallel and keeps them. A row that could not be computed is empty.
using Predict = std::function<std::vector<std::vector<double>>(const std::vector<std::vector<double>> &sets)>;

struct Wish
{
  double   relative_step = 0.03; ///< of a parameter, for the derivatives on the way; well above solver noise
  int      greatest_iterations = 12;
  double   robust_at = 3; ///< doubts from which on a reading loses weight
  unsigned seed = 1;      ///< of the sampling check: equal seeds, equal answers
  bool     check_by_sampling = true;
  int      n_check_runs = 4;     ///< parameter sets at which the quadratic model is compared with true runs
  bool     predict_only = false; ///< no reading is needed: what comes out is what is assumed
  int      n_samples = 4000;
};

/// 90 of 100 cases lie in it.
struct Band
{
  double value = 0, low = 0, high = 0;
};

enum class Verdict { agree, disagree, cannot_tell };

struct SettledParameter
{
  std::string name;
  Band        band;             ///< after the readings [unit of the parameter]
  Band        before;           ///< without them
  Band        sampled;          ///< the same as `band` from the sampling check; equal to it without the check
  double      doubt_left = 1;   ///< spread after over spread before, 0..1
  bool        settled = false;  ///< at least halved: doubt_left <= 0.5
  bool        at_limit = false; ///< stopped by its lowest or highest value
};

struct SettledObservation
{
  std::string name;
  double      predicted_before = 0; ///< at the medians
  Band        before;               ///< of the model without any reading (linearised)
  Band        predicted;            ///< of the settled model
  Band        sampled;              ///< the same from the sampling check
  Band        measured;
  /// Predicted from everything else (its own pull taken out, linearised) against the reading.
  Band    without_it;
  Verdict verdict = Verdict::cannot_tell;
  bool    held_out = false;
  double  misfit = 0;                 ///< (predicted - reading) / doubt; 0 for an at-least reading that holds
  double  weight = 1;                 ///< 0..1; below 1 the reading was taken for wild
  bool    beyond_assumptions = false; ///< not even alone within reach of what is assumed of the parameters
  std::vector<std::size_t> contradicts; ///< observations that cannot hold together with this one
};

/// A mixture of parameters that the readings leave open although each reading may see the single ones.
struct OpenDirection
{
  struct Part
  {
    std::string name;
    double      weight = 0; ///< relative change against the strongest part, -1..1
  };
  std::vector<Part> parts;
  double            doubt_left = 1; ///< along this direction, 0..1
  std::string       words;          ///< one sentence
};

/// How well the bands can be trusted.
struct SamplingCheck
{
  bool   done = false;
  double surrogate_error =
    0; ///< greatest error of the quadratic model at the check runs, in doubts of the readings
  double linear_error = 0;    ///< greatest difference between linear and sampled ends of bands, in half bands
  double effective_share = 0; ///< share of the samples that count, 0..1; near zero the check says little
  int    n_check_runs = 0;
  std::string words; ///< one sentence
};

struct Settled
{
  std::vector<SettledParameter>    parameters;
  std::vector<SettledObservation>  observations;
  std::vector<OpenDirection>       open;
  SamplingCheck                    check;
  std::vector<double>              values;      ///< the parameters, in their order
  std::vector<double>              predictions; ///< at the values, one an observation
  std::vector<std::vector<double>> jacobian;    ///< [observation][parameter]: d prediction / d ln(parameter)
  std::vector<std::vector<double>> covariance;  ///< of ln(parameter)
  std::vector<std::vector<double>> correlation;
  double                           misfit = 0; ///< root mean square misfit of the readings used, in doubts
  bool                             converged = false;
  std::string                      why_not;           ///< when not converged
  int                              n_evaluations = 0; ///< parameter sets asked for
  std::vector<std::string>         remarks; ///< sentences for people: contradictions, limits, failed runs
};

/// Inputs that cannot be used; `problems` names each, with the cure.
struct ImpossibleInput : std::runtime_error
{
  explicit ImpossibleInput(std::vector<std::string> all);
  std::vector<std::string> problems;
};

/// The model could not be run where it must be.
struct PredictionFailed : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// @throws ImpossibleInput with everything that is wrong: doubts of zero or larger than the value, limits or
/// priors that make no sense, no reading to settle on unless only a prediction is wished
void check_inputs(const std::vector<Parameter> &parameters, const std::vector<Observation> &observations,
                  bool predict_only = false);

/// @throws ImpossibleInput, PredictionFailed, and what `predict` throws
Settled settle(const std::vector<Parameter> &parameters, const std::vector<Observation> &observations,
               const Predict &predict, const Wish &wish);

/// What is known of some of the parameters and observations: their block of the normal distribution. What is
/// said of all of them together (open directions, checks, remarks) stays as it is.
Settled part_of(const Settled &whole, const std::vector<std::size_t> &parameters,
                const std::vector<std::size_t> &observations);

/// True when a parameter makes up more than `least_share` of the variance of some prediction.
bool shows(const Settled &settled, std::size_t parameter, double least_share);

/// Band of any other prediction of the settled model.
/// @param value     the prediction at the settled values
/// @param gradient  d prediction / d ln(parameter), in the order of the parameters
Band propagate(const Settled &settled, double value, const std::vector<double> &gradient);

/// A reading that could be taken next.
struct Candidate
{
  std::string         name;
  std::vector<double> gradient;  ///< d prediction / d ln(parameter) at the settled values
  double              doubt = 0; ///< one standard deviation of the reading to come
};

struct NextReading
{
  std::string name;
  std::size_t candidate = 0;  ///< its place in the list given
  double      doubt_left = 1; ///< doubt of the question after it over that before, 0..1
};

/// How much each candidate would narrow the question (a prediction given by its gradient), best first; equal
/// ones keep their order.
std::vector<NextReading> rank_readings(const Settled &settled, const std::vector<Candidate> &candidates,
                                       const std::vector<double> &question);

/// "agree", "disagree", "cannot tell".
const char *verdict_words(Verdict verdict);
} // namespace solemech::settle
