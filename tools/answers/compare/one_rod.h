// SPDX-License-Identifier: Apache-2.0
// Two bench sheets that were read on one rod settle its fall, its weight and its guide loss twice, each a
// little otherwise. That is no difference between stacks.
#pragma once

#include "solver/case.h"

#include <string>

namespace solemech::tools
{
/// When two drops differ in numbers only that both sheets settled, each pair within its bands, both cases get
/// the mean, weighed by what either knows. Doubts about the rig are taken out of both: it is compared as it
/// stands.
/// @return  what was made one, for people; "" when nothing was
std::string share_rod(solver::Case &a, solver::Case &b);
} // namespace solemech::tools
