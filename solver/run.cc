// SPDX-License-Identifier: Apache-2.0
// Mesh and step are chosen from the wished accuracy: a run and a coarser one of the same case are compared,
// the difference is the estimated error, and the run is refined while it misses the wish.
#include "solver/run.h"

#include "solver/closed_run.h"
#include "solver/results/catalogue.h"
#include "solver/time/no_balance.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

namespace solemech::solver
{
namespace
{
constexpr double refinement = 1.5;   // of mesh and step from one run to a finer one
constexpr double coarsening = 1.41;  // of the run that the first one is compared with
constexpr double penetration = 4e-4; // at an accuracy of 1 %, see Resolution

/// @param finer  of mesh and step, over what the accuracy asks for at first
Resolution resolution_of(const Case &input, double finer)
{
  const double accuracy = input.accuracy, mesh = rig_mesh(input.rig);
  // At 1 %: mesh level 1.2; error falls with the square of mesh size and step. The coarsest first run leaves
  // room for one coarser still that tells something: a mesh of level 0.7.
  const double fineness = std::clamp(std::sqrt(0.01 / accuracy), 0.83, 6.0) * finer;
  // The penetration of the contact is an error like the others and falls like them.
  return {1.2 * mesh * fineness, 1.1 / fineness, penetration / (fineness * fineness)};
}

/// Without a balance to start from there is no result, only the reason.
Result run_once(const Case &input, const Resolution &resolution, const RunOptions &options)
try
{
  return std::visit([&](const auto &rig) { return run_rig(input, rig, resolution, options); }, input.rig);
}
catch (const NoBalance &failure)
{
  Result nothing;
  nothing.complete = false;
  nothing.stop_reason = failure.what();
  throw RunFailed(failure.what(), std::move(nothing));
}

Result run_closed(const Case &input, const Resolution &resolution, const RunOptions &options)
{
  return closed_run(resolution, [&](const Resolution &now) { return run_once(input, now, options); });
}

/// Least error of a reading of this kind, relative (shares: in points of one).
double least_error(const ReadingKind &kind, const Resolution &resolution, const Case &input)
{
  const double finer = rig_mesh(input.rig), mesh_share = finer * finer;
  return mesh_share * kind.least_error.mesh / (resolution.mesh_level * resolution.mesh_level) +
         kind.least_error.step * resolution.step_tolerance * resolution.step_tolerance;
}

/// What the error of a reading counts against: shares (rebound, returns) are measured in points of one,
/// energies that are part of what was put in against that, everything else against itself.
double error_scale(const ReadingKind &kind, const Reading &reading, const Result &result)
{
  if (kind.unit == "1")
    return 1;
  return kind.part_of_input ? result.input_energy : std::abs(reading.value);
}

/// The second-order estimate is stated a quarter larger: between coarse meshes the order is not quite
/// reached.
constexpr double margin = 1.25;

/// By how much less a fine run is off than a coarse one, of second order. Thin layers have a whole number of
/// cells, so that a mesh meant to be `ratio` finer can be less so, and two runs then tell less of its error.
double error_ratio(const Result &coarse, const Result &fine, double ratio)
{
  constexpr double least = 1.5;
  const double     cells =
    coarse.facts.cells > 0 ? static_cast<double>(fine.facts.cells) / coarse.facts.cells : 0;
  return std::clamp(cells, least, ratio * ratio);
}

/// Sets the estimated errors of `fine`, `ratio` finer than `coarse` in mesh and step. @return the greatest of
/// its headline readings, relative
double estimate(const Case &input, const Result &coarse, double ratio, const Resolution &resolution,
                Result &fine)
{
  const double less = error_ratio(coarse, fine, ratio);
  double       worst = 0;
  for (auto &reading : fine.readings)
  {
    const auto *other = coarse.find(reading.name);
    if (!other)
      continue;
    const auto &kind = kind_of(reading);
    // Second order: the fine run is off by the difference over (ratio^2 - 1).
    reading.error = margin * std::abs(reading.value - other->value) / (less - 1);
    const double scale = error_scale(kind, reading, fine);
    if (reading.value != other->value) // else it was given, not calculated
      reading.error = std::max(reading.error, scale * least_error(kind, resolution, input));
    if (kind.sets_accuracy && reading.value != 0)
      worst = std::max(worst, reading.error / scale);
  }
  for (auto &reading : fine.readings)
    if (const auto base = kind_of(reading).follows; !base.empty())
      if (const auto *known = fine.find(std::string(base)); known && known->value != 0 && known->error >= 0)
        reading.error = std::max(reading.error, std::abs(reading.value / known->value) * known->error);
  return worst;
}
} // namespace

Result run(const Case &input, const RunOptions &options)
{
  const auto begin = std::chrono::steady_clock::now();
  const auto part_of = [&](double from, double to) {
    RunOptions part = options;
    if (options.progress)
      part.progress = [&options, from, to](double share, const char *what) {
        return options.progress(from + (to - from) * share, what);
      };
    return part;
  };

  // The run, a coarser one to compare it with, and finer ones while the wish is missed. One that fails is
  // passed over: what a coarse mesh cannot follow a finer one mostly can.
  const unsigned last = options.n_refinements + 1;
  Result         fine;
  double fineness = 0, error = std::numeric_limits<double>::infinity(); // of `fine`; 0: there is none yet
  std::size_t n_failed = 0;
  for (unsigned i = options.estimate_error ? 0 : 1;; ++i)
  {
    const double finer = i == 0 ? 1 / coarsening : std::pow(refinement, i - 1.0);
    const auto   resolution = resolution_of(input, std::pow(refinement, options.level) * finer);
    try
    {
      auto part = part_of(i == 0 ? 0 : i == 1 ? (options.estimate_error ? 0.3 : 0) : 0.5, i == 0 ? 0.3 : 1);
      part.pictures = options.pictures && i > 0;
      Result next = i == 0 ? run_once(input, resolution, part) : run_closed(input, resolution, part);
      if (fineness > 0)
        error = estimate(input, fine, finer / fineness, resolution, next);
      n_failed += next.facts.given_up;
      fine = std::move(next), fineness = finer;
    }
    catch (const RunFailed &)
    {
      ++n_failed;
      if (i >= last && fineness < 1) // the coarser run alone is no answer
        throw;
    }
    if (fineness >= 1 && (i >= last || !options.estimate_error || error <= input.accuracy))
      break;
  }
  fine.facts.given_up = n_failed;
  if (options.estimate_error && error > input.accuracy)
    fine.warnings.push_back(
      {"", std::isfinite(error)
             ? fmt::format("the readings are good to {:.1f} %, not to the target of {:.1f} %", 100 * error,
                           100 * input.accuracy)
             : "the error of the readings is not known: the runs on the other meshes failed"});
  fine.facts.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  return fine;
}
} // namespace solemech::solver
