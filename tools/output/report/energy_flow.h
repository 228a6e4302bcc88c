// SPDX-License-Identifier: Apache-2.0
// The energy account of a run over time, summed by part: what the weight still has, what every part holds and
// what it has turned into heat. The weight's height counts from its lowest point, so that nothing is
// negative; together the rows then stay at the energy put in plus what the weight gains while it sinks in. A
// press has no weight: its rows grow with the work of the head.
#pragma once

#include "tools/output/results/parts.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
struct PartFlow
{
  std::string         name;         ///< of the part, or "base of the rig"
  std::vector<double> stored, lost; ///< [J], one a recorded time
};

struct EnergyFlow
{
  double                input = 0;     ///< 100 % [J]
  double                sink_gain = 0; ///< given by gravity while the weight sinks in [J]
  std::vector<double>   weight;        ///< moving and height [J]; empty for a press
  std::vector<PartFlow> parts;         ///< in the order of parts_of, then others that the account names
  std::vector<double>   guide;         ///< lost in the guide so far [J]
  std::vector<double>   elsewhere;     ///< moving in the stack, held where faces touch [J]

  const PartFlow *find(const std::string &name) const;
};

/// Empty (input 0) when the run has no account.
EnergyFlow energy_flow(const Run &run);

/// Number of the recorded time nearest to `time` [s].
std::size_t recorded_at(const solver::Result &result, double time);

/// Recorded end of contact, or the last time when contact was not lost.
std::size_t recorded_end(const solver::Result &result);
} // namespace solemech::tools::report
