// SPDX-License-Identifier: Apache-2.0
// The settled stack as a case file like any other, and as numbers with their bands in JSON.
#pragma once

#include "tools/answers/sheet/settle_sheet.h"

#include <string>

namespace solemech::tools
{
/// Doubts that the readings leave about the unknown numbers of a sheet, in their order.
std::vector<solver::Doubt> settled_doubts(const Sheet &sheet, const settle::Settled &settled);

/// Case file: the sheet's own text with the settled values and materials; bands stand as comments, and as
/// [[settled]] blocks for the stack: the rig of another case has doubts of its own.
std::string settled_case_text(const Sheet &sheet, const SettledSheet &answer);

/// parameters, readings and predictions in SI with their 90 % bands, cautions; schema 1.
std::string settled_json(const Sheet &sheet, const SettledSheet &answer);
} // namespace solemech::tools
