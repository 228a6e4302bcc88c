// SPDX-License-Identifier: Apache-2.0
// Everything that one `solemech run` of one case file leaves behind, before it is printed or written.
#pragma once

#include "tools/language/named_file.h"
#include "tools/rigs/run.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// What a series varies: a column of the table and the axis of its picture.
struct Series
{
  std::string              quantity; ///< for people, e.g. "drop energy"
  std::string              unit;     ///< as printed, e.g. "J"
  std::vector<double>      values;   ///< one per run, in that unit
  std::vector<std::string> groups;   ///< one per run: runs of one group are joined by a line
};

struct RunRecord
{
  std::string                        label;          ///< of the case
  std::string                        case_text;      ///< as the user wrote it; changes as comments below
  std::string                        canonical_text; ///< resolved, every default filled in
  std::string                        hash;           ///< SHA-256 of the canonical text
  std::map<std::string, std::string> versions;       ///< program, libraries
  std::vector<Run>                   runs;
  std::optional<Series>              series;
  std::vector<NamedFile>             sheets = {}; ///< files that the case file names
  std::string                        folder = {}; ///< name of its folder below the root of results
  std::string                        sheet = {};  ///< as sheet_folder_name() takes it; "" of a prepared case
};
} // namespace solemech::tools
