// SPDX-License-Identifier: Apache-2.0
// Sole files: from a text to a resolved Sole that can be built. Every mistake of the file, of the trace that
// it names and of the geometry comes in one CaseError.
#pragma once

#include "solver/sole.h"
#include "tools/language/case_file.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
struct SoleFile
{
  solver::Sole sole;
  std::vector<std::string>
    assumed;                    ///< "outline.ball_medial 211.7 mm", ...: what the file leaves to the program
  std::vector<NamedFile> files; ///< that it names
};

/// Whether a text is a sole file, whatever its mistakes.
bool is_sole_file(const std::string &text);

/// @param file     its name, for messages and for the trace beside it
/// @param options  library and folders; changes are not read
SoleFile read_sole_text(const std::string &text, const std::string &file, const ReadOptions &options);

/// The file of a prepared sole by name, or the path itself. Throws CaseError with the nearest name.
std::filesystem::path find_sole(const std::string                        &name_or_path,
                                const std::vector<std::filesystem::path> &case_roots);

/// As of a case (case_text.h): one `name = value` per line, SI, 17 significant digits.
std::string canonical_text(const solver::Sole &sole);
} // namespace solemech::tools
