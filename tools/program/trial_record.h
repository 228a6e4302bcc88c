// SPDX-License-Identifier: Apache-2.0
// What the thin program and the solver program share of a trial: its checked stacks, its record, and whether
// it was answered before.
#pragma once

#include "tools/answers/trial/trial_input.h"
#include "tools/output/results/run_record.h"
#include "tools/program/command_line.h"

#include <filesystem>
#include <optional>

namespace solemech::tools
{
/// Reads and checks everything that a trial names.
/// @throws materials::CaseError, MissingPart
TrialInput trial_input(const TrialRequest &request);

/// The record of a trial before anything is calculated: the stack before and, when there is one, after the
/// change.
RunRecord trial_record(const TrialInput &trial);

/// Folder of the same trial, answered by the same version and untouched since.
std::optional<std::filesystem::path> finished_trial(const TrialRequest &request, const RunRecord &record);
} // namespace solemech::tools
