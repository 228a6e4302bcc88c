// SPDX-License-Identifier: Apache-2.0
// The order in which a shoe is read and taken apart: what destroys nothing first, then each cut with what it
// ends for good. General shop practice; local rules come first.
#pragma once

#include "tools/answers/sheet/sheet.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct TeardownStep
{
  bool        cuts = false;
  std::string what;
  std::string gives; ///< readings that it makes possible
  std::string ends;  ///< what cannot be read any more; empty: nothing
};

/// How far a shoe has been taken apart, from what the sheet says of its cuts.
enum class Dismantled { nothing, upper, plug, layers };
Dismantled dismantled(const std::string &cut);

/// Steps for the stack and part of a sheet that its cuts have left, in their order.
std::vector<TeardownStep> teardown_order(const Sheet &sheet);

/// Cautions of the cuts for this stack, the local rules first.
std::vector<std::string> teardown_cautions(const Sheet &sheet);
} // namespace solemech::tools
