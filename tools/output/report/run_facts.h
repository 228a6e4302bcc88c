// SPDX-License-Identifier: Apache-2.0
// Small questions to a run that every sentence of the report asks.
#pragma once

#include "tools/output/results/cautions.h"
#include "tools/rigs/facts.h"

#include <vector>

namespace solemech::tools::report
{
using rigs::compression_curve;
using rigs::curve_of;
using rigs::greatest_compression;
using rigs::greatest_in;
using rigs::length;
using rigs::milliseconds;
using rigs::of_stack;
using rigs::peak_force;
using rigs::short_labels;
using rigs::title_of;
using rigs::value_of;

/// Runs as what is invented about them is asked.
LabelledCases labelled_cases(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
