// SPDX-License-Identifier: Apache-2.0
// How far the numerical error of a share reaches. Every mixture is run at two levels of mesh and step; both
// give shares, and the difference of the two is taken for the error of the finer ones. (For errors that fall
// with the square of mesh size and step, that difference is 1.25 times the error at a refinement of 1.5: the
// same reserve as in the errors of readings.) A difference can be small by chance, so that no band is less
// than a least error.
#pragma once

#include "tools/answers/compare/explain.h"

#include <span>

namespace solemech::tools
{
/// Least numerical error of a share of a reading [unit of the reading].
/// @param name   of the reading
/// @param scale  size of the reading in the two runs, for readings whose error is relative
double least_share_error(const std::string &name, double scale);

/// The finer value with the band that the coarser one and the least error give it.
Banded banded(double fine, double coarse, double least);
} // namespace solemech::tools
