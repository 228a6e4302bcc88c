// SPDX-License-Identifier: Apache-2.0
// The case in which some of the changes from A to B are made. Rule for the height: when more than one change
// alters the thickness of the cushion (all but boards, plates and inserts), every mixture has the cushion
// height of A or, once the size is changed, of B; its foam layers are scaled alike to reach it. With all or
// none of the changes that is B or A itself.
#pragma once

#include "tools/answers/compare/changes.h"
#include "tools/answers/compare/shares.h"

#include <string>

namespace solemech::tools
{
struct Mixture
{
  solver::Case setup;
  std::string  impossible; ///< why it cannot be built; empty: it can
};

/// Foam thinner than this is not scaled to [m]: it cannot be cut.
inline constexpr double thinnest_foam = 0.5e-3;

/// The set of all of them.
ChangeSet all_of(std::size_t n_changes);

Mixture mixture(const ChangePlan &plan, ChangeSet changes);

/// The names of the changes of a set: "A with core -> air unit and plate added".
std::string mixture_name(const ChangePlan &plan, ChangeSet changes);

/// The rule for the height in words; "" when heights are left alone.
std::string closing_rule(const ChangePlan &plan);
} // namespace solemech::tools
