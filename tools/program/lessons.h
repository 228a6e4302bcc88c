// SPDX-License-Identifier: Apache-2.0
// Lessons by name, for both programs.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/inputs.h"

#include <vector>

namespace solemech::tools
{
/// All prebuilt lessons, by their place in the list.
std::vector<CaseHeading> lesson_headings();

/// The lesson that is asked for, checked, with its guess checked too.
/// @throws UsageError for an unknown name, a case without a lesson, or a guess that is no choice
/// @throws materials::CaseError
Input lesson_input(const LearnRequest &request);
} // namespace solemech::tools
