// SPDX-License-Identifier: Apache-2.0
// The rows of a trial: a reading before, after, and what to know of the difference. A difference
// counts only when it is above the numerical error of the two runs and above what can be read as real: 2
// points of a return or of travel, 3 per cent of anything else.
#pragma once

#include "solver/results/reading_kind.h"
#include "tools/answers/trial/solve_trial.h"
#include "tools/output/results/summary.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// A plate, or an insert as stiff as one: what works in bending.
bool is_stiff_sheet(const solver::Layer &layer);

/// Which way a reading went.
enum class Trend { higher, lower, same, unknown };

using solver::Wish;

struct Judgement
{
  Trend       trend = Trend::unknown;
  double      difference = 0; ///< points as a share, or relative
  std::string text;           ///< "+24 %", "no real change (-0.9 points)", "cannot tell: ..."
};

/// Judges a difference.
/// @param in_points  the values are shares and compared in points, else relative to `now`
/// @param error      numerical error of the difference, same unit as the values; < 0: not estimated
Judgement judge(double now, double then, bool in_points, double error);

struct TrialRow
{
  std::string           reading; ///< machine name
  std::string           name, now, then, note;
  Trend                 trend = Trend::unknown;
  Wish                  wish = Wish::neither;
  std::optional<double> now_value, then_value; ///< SI
  std::string           plain; ///< the difference in words for a sentence: "softer landing (peak force -6 %)"

  bool improves() const;
  bool gets_worse() const;
};

/// Rows of the readings, then of where it bottoms by drop energy and body mass.
std::vector<TrialRow> trial_rows(const TrialInput &trial, const TrialResult &result,
                                 const SummaryOptions &options);

/// What drop and step are where a stack bottoms, and how far that lies beyond what is checked; "" without
/// either.
std::string reserve_note(const TrialResult &result);
} // namespace solemech::tools
