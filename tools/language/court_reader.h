// SPDX-License-Identifier: Apache-2.0
// Reads [[court]] blocks: by schema, with units, ranges and all slips of a file at once, as materials are
// read.
#pragma once

#include "materials/court.h"
#include "tools/language/fields.h"

#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace solemech::materials
{
/// Schema of the blocks "court" and "court.states".
std::span<const Entry> court_entries();

/// All [[court]] blocks of a text (`format = 1` first); `file` is the name for messages. Throws CaseError
/// with every problem.
std::vector<Court> read_court_text(const std::string &text, const std::string &file);

/// Every *.toml file of a folder, in the order of names. Throws CaseError with the problems of all files; a
/// name given twice is one.
std::vector<Court> read_court_folder(const std::filesystem::path &folder);

/// The court of that name. Throws InvalidQuantity with the nearest name and the list.
const Court &find_court(const std::vector<Court> &courts, const std::string &name);
} // namespace solemech::materials
