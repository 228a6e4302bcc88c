// SPDX-License-Identifier: Apache-2.0
// From the name of a prepared sole, or a sole file, to a checked sole.
#pragma once

#include "tools/language/sole_file.h"

#include <string>

namespace solemech::tools
{
/// @throws materials::CaseError with every mistake of the file
SoleFile sole_named(const std::string &name);

/// Whether a file or name is that of a sole.
bool names_sole(const std::string &name);
} // namespace solemech::tools
