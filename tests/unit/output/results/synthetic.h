// SPDX-License-Identifier: Apache-2.0
// Made-up but plausible answers for tests of everything that prints, draws or stores them: half-sine force,
// a smoothly squeezed stack on a small mesh. No physics is solved; all numbers are invented.
#pragma once

#include "tools/output/results/run_record.h"

#include <string>

namespace solemech::tests
{
/// A heel: foam core ringed by a firmer foam over foam and rubber, dropped on.
tools::Run synthetic_heel(const std::string &label = "heel-drop");

/// A forefoot with an air unit: its layer has a film around a cavity.
tools::Run synthetic_forefoot(const std::string &label = "forefoot-drop");

/// A press loop on the heel.
tools::Run synthetic_press(const std::string &label = "press-loop");

/// One record with the given runs.
tools::RunRecord record_of(const std::vector<tools::Run> &runs, const std::string &label = "bench");
} // namespace solemech::tests
