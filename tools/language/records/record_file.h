// SPDX-License-Identifier: Apache-2.0
// A sensor's record from a CSV file, in SI.
//
// The first line that is no remark (#) names the columns, each with its unit: "time [ms], force [kN]" or
// "time (s); acceleration (g)". Columns are parted by comma, semicolon or tab; numbers have a decimal point,
// or a decimal comma between semicolons or tabs, which is noted. UTF-8. Columns it knows: time, force,
// acceleration (or deceleration), compression; others are skipped.
#pragma once

#include "tools/language/problem.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::records
{
/// Columns of equal length; those the file does not have are empty.
struct Record
{
  std::vector<double>      time;         ///< [s], rising
  std::vector<double>      force;        ///< [N]
  std::vector<double>      acceleration; ///< [m/s2]
  std::vector<double>      compression;  ///< [m]
  std::vector<int>         line;         ///< of each row in the file, from 1
  std::vector<std::string> notes;        ///< sentences for people: uneven sampling, skipped columns

  double interval = 0; ///< median of the sampling [s]; 0 without a time column
};

/// A gap is an interval beyond three times the median; the record keeps its place for whoever needs that
/// stretch.
bool gap_between(const Record &record, std::size_t first, std::size_t last);

/// Everything that is wrong goes to `problems` with line and column: no header, no or unknown units, decimal
/// commas between commas, a row of another length, something that is no number, times that do not rise,
/// UTF-16 or bytes that are no UTF-8, fewer than ten rows.
/// @param text  the whole file
Record read_record(const std::filesystem::path &path, const std::string &text, materials::Problems &problems);
} // namespace solemech::records
