// SPDX-License-Identifier: Apache-2.0
// The stack under its striker, cut through the middle and to scale, as a figure (SVG 1.1) of a printed sheet:
// one ink, materials told apart by the hatch that they have on pages and in pictures, names and thicknesses
// beside them.
#pragma once

#include "tools/output/picture/looks.h"

#include <string>
#include <vector>

namespace solemech::tools::learn
{
/// The figure. `caption` is its name for people who do not see it. Takes the colour of the text around it.
std::string stack_figure(const Run &run, const Looks &looks, const std::string &caption, int number = 0);

/// Numbers of those cases whose stacks look different, at most `most`: the first and the last are always
/// among them.
std::vector<std::size_t> different_stacks(const std::vector<const solver::Case *> &setups, std::size_t most);
} // namespace solemech::tools::learn
