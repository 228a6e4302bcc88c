// SPDX-License-Identifier: Apache-2.0
// Misfit of one reading in its own doubts, and the loss that lets go of wild readings.
#pragma once

#include "tools/study/settle.h"

#include <optional>

namespace solemech::settle
{
/// Misfit in doubts and its derivative by the prediction [1 / unit of the reading].
struct Residual
{
  double value = 0, slope = 0;
};

/// (predicted - reading) / doubt, or ln(predicted / reading) * reading / doubt for readings compared by
/// ratio. An at-least reading is treated like a value here. Nothing when a ratio is asked of a prediction
/// that is not positive.
std::optional<Residual> two_sided_residual(const Observation &observation, double predicted);

/// The same, but zero where an at-least reading holds.
std::optional<Residual> residual(const Observation &observation, double predicted);

/// Loss of a squared misfit s: s up to at^2, at^2 (1 + ln(s / at^2)) beyond: there the pull falls as at^2 /
/// misfit. Least squares is left untouched for readings that are not wild.
/// @return value, first and second derivative by s
struct Loss
{
  double value, first, second;
};
Loss wild_loss(double squared_misfit, double at);
} // namespace solemech::settle
