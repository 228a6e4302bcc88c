// SPDX-License-Identifier: Apache-2.0
// From the names and files on the command line to checked cases.
#pragma once

#include "tools/language/case_file.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// A case file, where it was found, and its cases.
struct Input
{
  std::filesystem::path path;
  CaseFile              file;
};

/// Reads all cases, prebuilt ones by name and others by file, with the library and the changes of --set.
/// @throws materials::CaseError with the problems of every file at once
/// @throws MissingPart when the library or the cases are not there
std::vector<Input> read_inputs(const std::vector<std::string> &names,
                               const std::vector<std::string> &settings);
} // namespace solemech::tools
