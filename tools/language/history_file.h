// SPDX-License-Identifier: Apache-2.0
// A history for the press from a CSV file: two columns, time [s] and value; a first line of words is a
// heading, lines beginning with # are remarks.
#pragma once

#include "tools/language/problem.h"

#include <string>
#include <utility>
#include <vector>

namespace solemech::tools
{
/// `file` is the name for messages. Rows (time [s], scale x value). Times must rise from 0 or above; the
/// first and last values should be near 0.
std::vector<std::pair<double, double>> read_history(const std::string &file, const std::string &text,
                                                    double scale, materials::Problems &problems);
} // namespace solemech::tools
