// SPDX-License-Identifier: Apache-2.0
// Readings that are no better known than an input of the case that comes with a band: grip goes with the friction of the
// court, life with its wear, depth with what an abrasive takes. Beside such a band the numerical error says nothing.
#pragma once

#include "tools/output/results/run_record.h"

#include <optional>
#include <string>

namespace solemech::tools
{
struct InputRange
{
  double      low = 0, high = 0; ///< of the reading, SI
  const char *why = "";          ///< "the friction of this court"
};

/// Grip and moments are taken as proportional to friction; that holds until a lug tips.
std::optional<InputRange> input_range(const Run &run, const std::string &reading);
} // namespace solemech::tools
