// SPDX-License-Identifier: Apache-2.0
// Where the files that a case names are found.
#pragma once

#include "materials/problem.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Finds stack, rig and history files, and keeps the texts that were read.
class SheetFolder
{
public:
  /// `case_roots` hold folders `stacks` and `rigs`; `own` is the folder of the case file and comes first.
  SheetFolder(std::vector<std::filesystem::path> case_roots, std::filesystem::path own)
    : case_roots_(std::move(case_roots)), own_(std::move(own))
  {
  }

  /// Path of `name` ("pair-07-heel" or "my/stack.toml") in folder `kind` ("stacks", "rigs"); empty: not
  /// found.
  std::filesystem::path find(const std::string &name, const std::string &kind) const;

  /// Names to suggest.
  std::vector<std::string> names(const std::string &kind) const;

  /// A data file beside the case file, or "" when there is none.
  std::filesystem::path data_file(const std::string &name) const;

  /// Text of a file, read once.
  const std::string &text(const std::filesystem::path &path, materials::Problems &problems);

  /// Texts read so far by where a case file in a folder of its own would look for them: as named beside the
  /// case file, or stacks/NAME.toml and rigs/NAME.toml.
  std::map<std::string, std::string> texts_beside() const;

private:
  std::vector<std::filesystem::path>           case_roots_;
  std::filesystem::path                        own_;
  std::map<std::filesystem::path, std::string> texts_;
};
} // namespace solemech::tools
