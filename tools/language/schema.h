// SPDX-License-Identifier: Apache-2.0
// The schema of case, stack and rig files: every entry once, with dimension, range, default and meaning.
// Reading, checking, suggestions, changes from the command line and the reference page all follow this table.
#pragma once

#include "tools/language/entries.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
/// Entries of case files, those of material blocks included.
std::span<const materials::Entry> case_entries();

/// The entry, or nullptr.
const materials::Entry *find_entry(std::string_view section, std::string_view name);

/// Names of the entries of a section.
std::vector<std::string> entry_names(std::string_view section);

/// Order and one-sentence meaning of the sections.
struct Section
{
  std::string_view name, heading, meaning;
};
std::span<const Section> case_sections();

/// The reference of all entries as Markdown; `cases/REFERENCE.md` is this text.
std::string reference_page();
} // namespace solemech::tools
