// SPDX-License-Identifier: Apache-2.0
// The text of a bench sheet turned into that of a plain case: what only a sheet knows is blanked out or
// replaced in place. Lines and columns of everything else stay, so that the case reader's messages point into
// the sheet, and the comments of the person stay where they were.
#pragma once

#include "tools/language/named_file.h"

#include <toml++/toml.h>

#include <string>
#include <vector>

namespace solemech::tools
{
class SheetText
{
public:
  explicit SheetText(std::string text);

  /// Blanks a key with its value.
  void remove(const toml::key &key, const toml::node &value);

  /// Blanks the heading and all entries of one block.
  void remove_table(const toml::table &table);

  /// Blanks the heading and all entries of a block ([pair]) or of each block of a list ([[reading]]).
  void remove_block(const toml::key &key, const toml::node &block);

  /// Puts a text in place of a value; a shorter one is filled with blanks.
  void replace(const toml::node &value, const std::string &with);

  /// The text with all changes made.
  std::string text() const;

private:
  struct Change
  {
    std::size_t begin, end;
    std::string with;
  };
  std::size_t offset(const toml::source_position &position) const;
  std::string blanks(std::size_t begin, std::size_t end) const;
  void        remove_entries(const toml::table &table);

  std::string              text_;
  std::vector<std::size_t> line_starts_;
  std::vector<Change>      changes_;
};

/// A case with the names of its copies in place of those of the person's own files.
/// @param files  in the order of the copies
std::string naming_copies(const std::string &case_text, const std::vector<NamedFile> &files);
} // namespace solemech::tools
