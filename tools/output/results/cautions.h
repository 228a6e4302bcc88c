// SPDX-License-Identifier: Apache-2.0
// Sentences that belong under every summary when the stack calls for them: hazards of the work at the bench,
// what the numbers are not, and whether the stack is invented. General shop practice; local rules come first.
#pragma once

#include "tools/rigs/run.h"

#include <string>
#include <utility>
#include <vector>

namespace solemech::tools
{
/// True when the case or a material of its stack is invented.
bool is_invented(const solver::Case &setup);

using LabelledCases = std::vector<std::pair<std::string, const solver::Case *>>;

/// Runs as what is invented about them is asked.
LabelledCases labelled_cases(const std::vector<const Run *> &runs);

/// For the foot of a picture: "invented demo stacks", by label when other stacks stand beside them, else
/// "library materials partly invented", or "". Whoever puts in a stack of their own never reads that it is
/// invented.
std::string invented_words(const LabelledCases &cases);

/// The same as sentences for the end of a summary.
std::vector<std::string> invented_sentences(const LabelledCases &cases);

/// Cautions of a change before it is made in a shoe: inserts and plates, units, and what a number cannot
/// tell.
std::vector<std::string> change_cautions(const solver::Case &now, const solver::Case &changed);

/// Cautions that apply to at least one of the cases, each once.
std::vector<std::string> cautions(const std::vector<const solver::Case *> &setups);
} // namespace solemech::tools
