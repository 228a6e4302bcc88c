// SPDX-License-Identifier: Apache-2.0
// Case files: from a name, a path or a text to resolved cases. A file with series gives several. Every slip
// of the file, of its stack and rig files and of the changes from the command line comes in one CaseError.
#pragma once

#include "solver/case.h"
#include "tools/language/lesson.h"
#include "tools/language/material_reader.h"
#include "tools/language/sheet_folder.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
struct ReadOptions
{
  std::vector<std::string>           overrides;  ///< "insert.thickness=2 mm", as after --set
  std::vector<std::filesystem::path> case_roots; ///< folders that hold stacks/, rigs/ and groups of cases
  materials::MaterialSource          library;
  std::vector<std::string>           swaps = {}; ///< "insert = eva-insert 3 mm", as after --swap
  std::string range = {}; ///< "gauge_pressure=80..200 kPa", as after --range; varied last
  std::optional<std::vector<NamedFile>> copies =
    {}; ///< of a finished run, instead of the files that the case names
};

/// Where a reading is expected, and by whom.
struct ExpectedRange
{
  std::string label;             ///< of the case
  std::string reading;           ///< e.g. "rebound_by_height"
  double      low = 0, high = 0; ///< SI; peak_deceleration in g
  std::string source;
};

/// One series of a file: the entry that is varied and its values as written. The cases are every combination
/// of the series, the last one varying fastest.
struct VariedEntry
{
  std::string              address;
  std::vector<std::string> values;
};

struct CaseFile
{
  std::string                label; ///< name of the file without ending
  std::string                title, group, question, note;
  std::vector<solver::Case>  cases;  ///< one, or every combination of the series
  std::vector<VariedEntry>   series; ///< empty when there is one case
  std::vector<ExpectedRange> expected;
  std::optional<Lesson>      lesson;  ///< not with changes of the command line: its runs may then be others
  std::string                text;    ///< the file as read
  std::vector<std::string>   changes; ///< of the command line, as told to people: "core.thickness = 18 mm"
  std::vector<NamedFile>     sheets;  ///< stack, rig and data files that it names
  std::vector<std::string>   assumed; ///< entries that nobody wrote, with their defaults
};

/// Reads and checks a case file. Throws materials::CaseError.
CaseFile read_case_file(const std::filesystem::path &path, const ReadOptions &options);

/// The same from text. `file` is the name for messages; stack, rig and data files are sought in its folder
/// first.
CaseFile read_case_text(const std::string &text, const std::string &file, const ReadOptions &options);

/// Head of a case file, for lists.
struct CaseHeading
{
  std::filesystem::path path;
  std::string           label, title, group, question;
  int                   lesson = 0; ///< place of its lesson in the list; 0: it has none
};

/// All cases in the group folders of the roots (not stacks and rigs), by group and label. Broken files are
/// left out.
std::vector<CaseHeading> case_headings(const std::vector<std::filesystem::path> &case_roots);

/// Path of a case given by name or as a file. Throws CaseError naming the nearest case.
std::filesystem::path find_case(const std::string                        &name_or_path,
                                const std::vector<std::filesystem::path> &case_roots);
} // namespace solemech::tools
