// SPDX-License-Identifier: Apache-2.0
// The commands, one file each. Each prints its answer to standard output and returns how it ended;
// errors leave as exceptions and are explained in one place (failures.h).
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"

namespace solemech::tools
{
Exit print_help(const HelpRequest &request);
Exit print_version(const VersionRequest &request);
Exit list_cases(const CasesRequest &request);
Exit list_materials(const MaterialsRequest &request);
Exit check_files(const CheckRequest &request);

/// Draws a sole, and prints what it measures.
Exit draw_sole(const DrawRequest &request);

/// Lists the lessons; one that is named is checked and handed to the solver program.
Exit learn(const LearnRequest &request, const std::vector<std::string> &arguments);

/// Reads what is compared and answers from a finished comparison; everything else is handed to the solver
/// program.
Exit compare(const CompareRequest &request, const std::vector<std::string> &arguments);

/// Reads both parts of a pair and answers from a finished one; everything else is handed to the solver
/// program.
Exit settle_pair_of_sheets(const PairRequest &request, const std::vector<std::string> &arguments);

/// Checks all inputs and answers from finished runs; what is left is handed to the solver program, which
/// replaces this process.
/// @param arguments  as the person typed them, for the solver program
Exit run(const RunRequest &request, const std::vector<std::string> &arguments);

/// Writes a bench sheet or a rig file to fill in; never over a file that is there.
Exit write_sheet(const SheetRequest &request);

/// Checks a bench sheet; the solver program then says in which order to read it and what to read next.
Exit plan_sheet(const PlanRequest &request, const std::vector<std::string> &arguments);

/// Writes book.html and book.csv, the index of a folder of sheets, into that folder.
Exit write_book(const BookRequest &request);

/// Tries a change on a stack: checks it, answers from a finished trial, or hands over to the solver program.
Exit try_change(const TrialRequest &request, const std::vector<std::string> &arguments);
} // namespace solemech::tools
