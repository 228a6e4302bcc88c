// SPDX-License-Identifier: Apache-2.0
// What differs between two rigs, entry by entry, for people.
#pragma once

#include "solver/case.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// One entry that differs, for people.
struct ChangeDetail
{
  std::string what, from, to;
};

/// Gives a case what another one has of its rig.
using RigTaker = std::function<void(solver::Case &to, const solver::Case &from)>;

/// What differs between two rigs and can be changed on its own. A striker is one; of a slide, court, shape of
/// the bar and the way it is pressed and led are three, because people choose them apart.
struct RigDifference
{
  std::string name; ///< "drop height" when nothing else differs, else "rig", "court", "shape of the bar" ...
  std::vector<ChangeDetail> details;
  RigTaker                  take;
};
} // namespace solemech::tools

namespace solemech::tools::rigs
{
using Details = std::vector<ChangeDetail>;

/// Adds a row when the two texts differ.
void add_row(Details &details, const char *what, const std::string &from, const std::string &to);

/// "1.2 kg": up to six digits, the value times `scale` in a unit.
std::string quantity(double value, const char *unit, double scale = 1);

/// "flat 40 mm face" and the like.
std::string striker_words(const solver::Tup &tup);

/// True when a run cannot tell the two rigs apart.
bool same_rig(const solver::Rig &a, const solver::Rig &b);
} // namespace solemech::tools::rigs
