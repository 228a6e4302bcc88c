// SPDX-License-Identifier: Apache-2.0
// Small questions to a run that every sentence about it asks.
#pragma once

#include "tools/rigs/run.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools::rigs
{
/// A reading in SI, none when the run has not got it.
std::optional<double> value_of(const Run &run, const std::string &name);

/// The same, 0 for none: for a reading that a finished run of this kind always has.
double number(const Run &run, const std::string &name);

/// The warnings on a reading as a sentence after another one: " Text." of the first, or "".
std::string warning_on(const Run &run, const std::string &reading);

/// A curve of any length; null when there is none.
const std::vector<double> *any_curve(const Run &run, const std::string &name);

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

/// "8.3 mm of 28.9 mm": a way as part of the height of the stack.
std::string of_stack(const Run &run, double way);

/// The labels of runs without what they all start with, up to a dash: "heel-2J", "forefoot-2J".
std::vector<std::string> short_labels(const std::vector<const Run *> &runs);

/// Title of the case, or its label when it has none.
std::string title_of(const Run &run);

/// The titles of runs side by side without the words that all of them end with: "foam heel", not "foam heel
/// under the guided rod". Nothing when they do not tell the runs apart.
std::vector<std::string> titles_apart(const std::vector<const Run *> &runs);

/// The values times `factor`.
std::vector<double> scaled(std::vector<double> values, double factor);

inline constexpr std::size_t most_lines = 6; ///< that one chart can tell apart
} // namespace solemech::tools::rigs
