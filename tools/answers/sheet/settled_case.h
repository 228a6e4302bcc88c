// SPDX-License-Identifier: Apache-2.0
// The settled stack as a case file like any other, and as numbers with their bands in JSON.
#pragma once

#include "tools/answers/sheet/settle_sheet.h"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace solemech::tools
{
/// Of the variance of a prediction: a doubt that never makes up as much widens no band by more than a
/// hundredth, and is not worth two runs in each later use of the stack.
inline constexpr double least_share_of_variance = 0.02;

/// Doubts that the readings leave about the unknown numbers of a sheet, in their order.
std::vector<solver::Doubt> settled_doubts(const Sheet &sheet, const settle::Settled &settled);

/// Case file: the sheet's own text with the settled values and materials; bands stand as comments, and as
/// [[settled]] blocks for the stack: the rig of another case has doubts of its own.
std::string settled_case_text(const Sheet &sheet, const SettledSheet &answer);

/// The same numbers as a part of a larger answer.
nlohmann::ordered_json settled_document(const Sheet &sheet, const SettledSheet &answer);

/// parameters, readings and predictions in SI with their 90 % bands, cautions; schema 1.
std::string settled_json(const Sheet &sheet, const SettledSheet &answer);
} // namespace solemech::tools
