// SPDX-License-Identifier: Apache-2.0
// Small questions to a run that every sentence of the report asks.
#pragma once

#include "tools/output/results/cautions.h"
#include "tools/output/results/run_record.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::report
{
/// Runs as what is invented about them is asked.
LabelledCases labelled_cases(const std::vector<const Run *> &runs);

/// True for a falling weight or ball, false for a press.
bool is_drop(const Run &run);

/// A reading in SI, none when the run has not got it.
std::optional<double> value_of(const Run &run, const std::string &name);

/// A curve with one value a recorded time; null when there is none.
const std::vector<double> *curve_of(const Run &run, const std::string &name);

/// The way of the striker below first touch; null when there is none.
const std::vector<double> *compression_curve(const Run &run);

/// Greatest value of a curve, 0 for null.
double greatest_in(const std::vector<double> *curve);

/// Greatest compression: the reading, or what the curve has so far [m].
double greatest_compression(const Run &run);

/// Peak force: the reading, or what the curve has so far [N].
double peak_force(const Run &run);

/// "6.2 mm".
std::string length(double metres);

/// "4.7 ms", "1.5 s".
std::string milliseconds(double seconds);

/// "8.3 mm of 28.9 mm": a way as part of the height of the stack.
std::string of_stack(const Run &run, double way);

/// "drop weight", "ball", "press head" or "tip of the gauge": who strikes.
std::string striker_name(const solver::Case &setup);

/// The labels of runs without what they all start with, up to a dash: "heel-2J", "forefoot-2J".
std::vector<std::string> short_labels(const std::vector<const Run *> &runs);

/// Title of the case, or its label when it has none.
std::string title_of(const Run &run);
} // namespace solemech::tools::report
