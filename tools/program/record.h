// SPDX-License-Identifier: Apache-2.0
// A checked input as the record that a run fills: texts, fingerprint, versions, one empty result per case.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/program/inputs.h"

#include <map>
#include <optional>
#include <string>

namespace solemech::tools
{
/// Version of the program that decides whether a finished run still answers: release and sources.
std::string answering_version();

/// Version of the program and of what its numbers rest on.
std::map<std::string, std::string> program_versions();

/// Where the results of a case go.
struct ResultsName
{
  std::string sheet;  ///< as sheet_folder_name() takes it; "" of a prepared case
  std::string folder; ///< below the root of results
};

/// @param path   of the case file, "" when it has none
/// @param label  of the case
ResultsName results_name(const std::filesystem::path &path, const std::string &label);

/// The record of an input before anything is calculated.
RunRecord planned_record(const Input &input);

/// The same of inputs that say more than their cases: as texts, for people and for the fingerprint.
RunRecord planned_record(const Input &input, const std::string &canonical, const std::string &answered);

/// What a case file varies, as the axis of its table and picture: the last series whose values are numbers of
/// one unit. Nothing when there is no such series.
std::optional<Series> varied_series(const CaseFile &file);
} // namespace solemech::tools
