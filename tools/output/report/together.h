// SPDX-License-Identifier: Apache-2.0
// Several runs of one page: what they say side by side. Two values that lie within their estimated errors of
// each other count as equal.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// Several runs in one sentence: which rebounds higher, which hits harder. Of one run: its own sentence.
std::string together_sentence(const std::vector<const Run *> &runs);

/// Three numbers of several runs: all values up to four runs, else from least to greatest.
std::vector<rigs::Headline> together_headline(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
