// SPDX-License-Identifier: Apache-2.0
// The files that a case names: stacks, rigs, histories, readings. They lie in the folder of the case or below
// it (tools/language/file_text.h), or are prepared ones of the program. What was read is kept, so that
// results can hold copies under names of the program's own; a case of a finished run is read with those
// copies instead.
#pragma once

#include "tools/language/file_text.h"
#include "tools/language/named_file.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
class SheetFolder
{
public:
  /// A file that was looked for; `shown` is its name for messages.
  struct Found
  {
    materials::FileText file;
    std::string         shown;
    bool                is_prepared = false;
  };

  /// `case_roots` hold folders `stacks` and `rigs`; `own` is the folder of the case file and comes first.
  /// With `copies` no other file is looked for.
  SheetFolder(std::vector<std::filesystem::path> case_roots, std::filesystem::path own,
              std::optional<std::vector<NamedFile>> copies = std::nullopt)
    : case_roots_(std::move(case_roots)), own_(std::move(own)), copies_(std::move(copies))
  {
  }

  /// A stack or rig: "my/stack.toml", or "pair-07-heel" for a file of that name beside the case, in its
  /// folder `stacks`, or among the prepared ones.
  Found sheet(const std::string &kind, const std::string &name);

  /// A file of data, such as a history.
  Found data(const std::string &kind, const std::string &name);

  /// Names of prepared stacks or rigs, to suggest.
  std::vector<std::string> names(const std::string &kind) const;

  /// What was read so far, each file once.
  const std::vector<NamedFile> &used() const { return used_; }

private:
  Found copy(const std::string &kind, const std::string &name) const;
  Found below(const std::string &name) const;
  Found sought(const std::string &kind, const std::string &name) const;
  Found noted(const std::string &kind, const std::string &name, Found found);

  std::vector<std::filesystem::path>    case_roots_;
  std::filesystem::path                 own_;
  std::optional<std::vector<NamedFile>> copies_;
  std::vector<NamedFile>                used_;
};
} // namespace solemech::tools
