// SPDX-License-Identifier: Apache-2.0
// The stack of a case as a stack file of its own: what a rig is left out, everything else stands in it, with
// all changes made. And its bench, as blocks that need no rig file beside them.
#pragma once

#include "tools/language/case_file.h"

#include <string>

namespace solemech::tools
{
/// Stack file of a case: lug or layers, plug, materials of its own, settled numbers.
/// @param text, file  of the case, as read_case_text takes them
/// @throws materials::CaseError when the case cannot be read
std::string stack_text(const std::string &text, const std::string &file, const ReadOptions &options);

/// The rest of it: the blocks of its rig and surroundings, with what a rig file and `options.overrides` say.
std::string bench_text(const std::string &text, const std::string &file, const ReadOptions &options);

/// The blocks of its stack, where the case alone does not say them as they are: it names a stack, or changes
/// are made. Empty: it does.
std::string changed_stack_text(const std::string &text, const std::string &file, const ReadOptions &options);
} // namespace solemech::tools
