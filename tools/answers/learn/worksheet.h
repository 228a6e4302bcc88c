// SPDX-License-Identifier: Apache-2.0
// The printable worksheet of a lesson, one HTML file without script or outside references: on the first page
// the question, the choices, blanks for the guess and its reason, the stack and a table to fill in; the
// answers on the second.
#pragma once

#include "tools/answers/learn/answer.h"

#include <string>

namespace solemech::tools::learn
{
/// The file. Text of the case is escaped wherever it stands.
/// @throws solver::ResultsError when a run lacks a reading of the table that its rig gives
std::string worksheet_html(const CaseFile &file, const LessonAnswer &answer, const RunRecord &record);
} // namespace solemech::tools::learn
