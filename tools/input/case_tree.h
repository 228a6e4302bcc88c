// SPDX-License-Identifier: Apache-2.0
// One case as a tree of entries: the case file with its stack and rig files merged in and all changes applied.
// Nodes keep the position where a person wrote them, also when they moved.
#pragma once

#include "materials/problem.h"

#include <toml++/toml.h>

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
    : case_roots_(std::move(case_roots))
    , own_(std::move(own))
  {}

  /// Path of `name` ("pair-07-heel" or "my/stack.toml") in folder `kind` ("stacks", "rigs"); empty: not found.
  std::filesystem::path find(const std::string &name, const std::string &kind) const;

  /// Names to suggest.
  std::vector<std::string> names(const std::string &kind) const;

  /// A data file beside the case file, or "" when there is none.
  std::filesystem::path data_file(const std::string &name) const;

  /// Text of a file, read once.
  const std::string &text(const std::filesystem::path &path, materials::Problems &problems);

private:
  std::vector<std::filesystem::path>           case_roots_;
  std::filesystem::path                        own_;
  std::map<std::filesystem::path, std::string> texts_;
};

/// A change of one entry: its address in segments, as written, and the new value.
struct Change
{
  std::vector<std::string> address;
  std::string              written;  ///< address for messages
  toml::table              holder;   ///< holds the value under the key "value"
};

/// Change from the command line, `insert.thickness=2 mm`. A slip goes to `problems` and gives no address.
Change change_from_option(const std::string &option, materials::Problems &problems);

/// Splits an address at its dots.
std::vector<std::string> split_address(const std::string &address);

/// Merges stack and rig into `tree` and applies `[change]`, then `changes` in order. `known_materials` are library
/// names that an address may begin with.
void complete_tree(toml::table &tree, std::vector<Change> changes, SheetFolder &folder,
                   const std::vector<std::string> &known_materials, materials::Problems &problems);
} // namespace solemech::tools
