// SPDX-License-Identifier: Apache-2.0
// The canonical text of a resolved case, and its fingerprint. Spelling, units and comments of the file do not
// matter; every number that a run sees does, to the last digit.
#pragma once

#include "solver/case.h"

#include <string>

namespace solemech::tools
{
/// One `name = value` per line, SI, 17 significant digits. Label, titles, notes and sources are left out.
std::string canonical_text(const solver::Case &data);

/// SHA-256 (FIPS 180-4) of the canonical text and of `result_version`, in 64 hexadecimal digits. The version
/// is to change whenever the program's numbers change.
std::string case_hash(const solver::Case &data, const std::string &result_version);
} // namespace solemech::tools
