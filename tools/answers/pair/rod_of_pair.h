// SPDX-License-Identifier: Apache-2.0
// The rod that both parts of a pair were read under. Only its height may differ from part to part: the model
// bridges that. A mass or guide loss that both sheets give with ± is one number when they agree within it.
#pragma once

#include "tools/answers/sheet/sheet.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// @param entries  "pair.label": the message points at the first of them that the sheet has
/// @throws materials::CaseError that a pair cannot be made of this sheet
[[noreturn]] void refuse_pair(const Sheet &sheet, const std::vector<std::string> &entries,
                              const std::string &reason, const std::string &cure);

/// @param parts  heel, forefoot; numbers that were brought together are the same in both afterwards
/// @param notes  sentences: what was brought together
/// @throws materials::CaseError when they were not read under one rod
void put_under_one_rod(std::vector<Sheet> &parts, std::vector<std::string> &notes);
} // namespace solemech::tools
