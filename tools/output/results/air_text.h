// SPDX-License-Identifier: Apache-2.0
// The air of a unit in words. A punctured unit keeps in the case the pressure it had while it was sealed;
// what people read must not call it full, so the state decides.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <string>

namespace solemech::tools
{
/// The gas of an air unit in words: "140 kPa gauge", "leaking from 140 kPa gauge", "open, no pressure".
std::string air_text(const solver::AirUnit &unit);

/// The same of a chamber of a run; its state stands in the case, not in the solver's facts.
std::string air_text(const solver::Case &setup, const solver::ChamberFacts &chamber);

/// True when the case says that the unit of this chamber is open, whatever pressure is written beside it.
bool is_open(const solver::Case &setup, const solver::ChamberFacts &chamber);
} // namespace solemech::tools
