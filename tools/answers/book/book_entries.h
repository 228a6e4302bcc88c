// SPDX-License-Identifier: Apache-2.0
// What a folder of bench sheets holds: the sheets with their readings, and the newest result of each.
//
// Sheets are *.toml files in the folder and below it, results those under results/<name>/<number> of the
// folder or of one between it and the sheet. Hidden folders and results are not entered for sheets and links
// not followed, so that nothing outside is touched.
#pragma once

#include <toml++/toml.h>

#include <chrono>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::book
{
/// One [[reading]] of a sheet, as written; `numbers` when they could be taken in SI.
struct Measured
{
  std::string
    name; ///< kind, with the layer and conditions it belongs to: "hardness of core", "rebound from 250 mm"
  std::vector<std::string> values;
  bool        is_elsewhere = false; ///< not as the sheet's bench stands: another fall, weight or time
  std::string text() const;         ///< for people
};

/// One reading of a finished run, or of the settled model.
struct Computed
{
  std::string name; ///< as in readings.csv: "rebound_height"
  double      value = 0, error = 0;
  std::string unit; ///< SI
};

/// A number that readings settled.
struct SettledNumber
{
  std::string name;
  double      value = 0, low = 0, high = 0; ///< 90 %
  double      doubt_left = 1;
};

struct Result
{
  std::filesystem::path                 folder; ///< relative to the book's folder
  std::chrono::system_clock::time_point made;
  std::vector<Computed>                 readings;
  std::vector<SettledNumber>            settled;
  bool                                  same_sheet = false; ///< made from the sheet as it is now
  std::string                           changes;            ///< of the command line: "core.thickness = 18 mm"
};

struct Sheet
{
  std::filesystem::path file; ///< relative to the book's folder
  std::string           title, pair, part;
  std::string           stack; ///< "core eva-soft 16.0 mm, ...", or the name of a stack file
  std::vector<Measured> readings;
  std::optional<Result> result;  ///< the newest
  std::string           problem; ///< why the file could not be read; empty: it could
};

struct Book
{
  std::vector<Sheet> sheets; ///< by file name
};

/// The table of a sheet as an entry; `nothing` when it is none (rigs, courts, yardsticks, parts of stacks).
std::optional<Sheet> sheet_entry(const toml::table &table, const std::filesystem::path &file);

/// @throws std::filesystem::filesystem_error when the folder cannot be listed
Book read_book(const std::filesystem::path &folder);
} // namespace solemech::book
