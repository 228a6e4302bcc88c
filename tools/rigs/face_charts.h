// SPDX-License-Identifier: Apache-2.0
// Charts of the face of a lug, of one slide and of its wear.
#pragma once

#include "solver/results/result.h"
#include "tools/rigs/run.h"
#include "tools/rigs/shown.h"

namespace solemech::tools::rigs
{
/// Those of the runs that kept a face.
std::vector<const Run *> with_faces(const std::vector<const Run *> &runs);

/// Without lines.
LineChart pressure_chart();

void add_pressure(LineChart &chart, const std::string &name, const solver::FaceLine &face);
} // namespace solemech::tools::rigs
