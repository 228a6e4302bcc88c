// SPDX-License-Identifier: Apache-2.0
// The report page and the JSON of a lesson.
#pragma once

#include "tools/answers/learn/answer.h"
#include "tools/output/report/report_blocks.h"

#include <string>

namespace solemech::tools::learn
{
/// The page of the runs with the lesson in front. The record must outlive it.
report::Page lesson_page(const LessonAnswer &answer, const RunRecord &record);

/// What `solemech run --json` prints of the record, and the entry "lesson".
std::string lesson_json(const LessonAnswer &answer, const RunRecord &record);
} // namespace solemech::tools::learn
