// SPDX-License-Identifier: Apache-2.0
// The command line as a value: which command, with what. Both executables read it with the same text, so
// the thin program can hand its arguments on to the solver unchanged. A command is one word here; what it
// takes and what its help says stand in its own file.
#pragma once

#include "tools/program/book_request.h"
#include "tools/program/cases_request.h"
#include "tools/program/check_request.h"
#include "tools/program/compare_request.h"
#include "tools/program/draw_request.h"
#include "tools/program/help_request.h"
#include "tools/program/learn_request.h"
#include "tools/program/materials_request.h"
#include "tools/program/pair_request.h"
#include "tools/program/plan_request.h"
#include "tools/program/run_request.h"
#include "tools/program/sheet_request.h"
#include "tools/program/trial_request.h"
#include "tools/program/version_request.h"

#include <string>
#include <variant>
#include <vector>

namespace solemech::tools
{
/// All commands, in the order in which help lists them.
using Request = std::variant<CasesRequest, MaterialsRequest, RunRequest, PairRequest, CompareRequest,
                             SheetRequest, CheckRequest, DrawRequest, LearnRequest, BookRequest, PlanRequest,
                             TrialRequest, VersionRequest, HelpRequest>;

/// Reads the arguments after the program's name.
/// @throws UsageError
Request read_command_line(const std::vector<std::string> &arguments);
} // namespace solemech::tools
