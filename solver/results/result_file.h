// SPDX-License-Identifier: Apache-2.0
// The record of a run: one HDF5 file with the inputs as text and resolved, their hash, the versions that
// computed it, and per run of a series the curves, ledger, readings, warnings and pictures in time.
//   /                     case_text, resolved_text; attributes format, schema, label, case_hash
//   /versions             one attribute a program or library
//   /runs/0000            attributes label, input_energy, time_of_peak, ...; data set time
//   /runs/0000/curves     one data set a curve, attributes unit and meaning, in their order
//   /runs/0000/ledger     energy (rows x times), part, kind, type
//   /runs/0000/readings   name, value, unit, meaning, error
//   /runs/0000/picture    cells, cell_part, part_names, tup_outline, snapshots/...
// Numbers are 64-bit and survive a round trip unchanged.
#pragma once

#include "solver/results/result.h"
#include "solver/results/result_check.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace solemech::solver
{
struct StoredRun
{
  std::string label; ///< of this run in the series
  Result      result;
};

struct ResultRecord
{
  std::string                        label;         ///< of the whole record
  std::string                        case_text;     ///< as the user wrote it
  std::string                        resolved_text; ///< canonical, every default filled in
  std::string                        case_hash;     ///< SHA-256 of the resolved text
  std::map<std::string, std::string> versions;      ///< program, libraries
  std::vector<StoredRun>             runs;
};

/// Writes the record under a temporary name beside `path`, then renames it.
/// @throws ResultsError on NaN or infinity anywhere, and when the file cannot be written
void write_result_file(const std::filesystem::path &path, const ResultRecord &record);

/// Reads a record back.
/// @throws ResultsError when the file is missing, damaged, of another kind or of a newer schema
ResultRecord read_result_file(const std::filesystem::path &path);
} // namespace solemech::solver
