// SPDX-License-Identifier: Apache-2.0
// The summary a person reads in the terminal and finds as summary.txt: the rig, the readings side by side,
// where the energy went, how good the numbers are, and the cautions. Plain text, 7-bit but for the degree,
// plus-minus and multiplication signs; emphasis only when asked for.
#pragma once

#include "tools/language/number_text.h"
#include "tools/output/results/run_record.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct SummaryOptions
{
  Lengths lengths = Lengths::millimetre;
  int     width = 100;      ///< columns of the terminal
  bool    emphasis = false; ///< bold headings by escape sequences
  bool    details = false;  ///< all definitions, decimals, solver facts
};

/// How wide the bands of settled stacks are, in one sentence; "" when none of the runs has doubts.
std::string band_sentence(const std::vector<Run> &runs);

/// Whether runs came close to bottoming, and their warnings.
std::string warnings_text(const std::vector<Run> &runs, const SummaryOptions &options);

/// What a run calls for beside its numbers: bottoming, warnings, cautions, what is invented.
std::string notes_text(const Run &run, const SummaryOptions &options);

/// Runs side by side, or one row per run when there are more than fit beside each other or a series is given.
std::string summary_text(const std::vector<Run> &runs, const SummaryOptions &options,
                         const Series *series = nullptr);
} // namespace solemech::tools
