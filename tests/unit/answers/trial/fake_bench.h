// SPDX-License-Identifier: Apache-2.0
// A bench with a known answer: every stack is one linear spring of stiffness area times modulus over height,
// by its softest foam. Energy E squeezes it by sqrt(2 E / k), force F by F / k, so that the load at which it
// comes to an end of travel follows in closed form.
#pragma once

#include "tools/answers/trial/solve_trial.h"

#include <cmath>

namespace solemech::tests
{
struct FakeBench
{
  double           stiffness = 500e3;          ///< of 10 mm of core [N/m]
  double           error_share = 0.005;        ///< of every reading
  double           stops_above = 1e9;          ///< compression of the core [m] at which a run stops early
  std::atomic<int> n_whole{0}, n_searching{0}; ///< runs with and without estimated error

  static const solver::Layer &core(const solver::Case &data)
  {
    for (const auto &layer : data.layers)
      if (layer.name == "core" || layer.name == "topper")
        return layer;
    return data.layers.front();
  }

  solver::Result solved(const solver::Case &data) const
  {
    const double   k = stiffness * 10e-3 / core(data).thickness;
    solver::Result result;
    double         squeezed = 0;
    const auto     add = [&](const char *name, double value, const char *unit) {
      result.readings.push_back({name, value, unit, "made up", error_share * std::abs(value)});
    };
    if (const auto *drop = std::get_if<solver::DropRig>(&data.rig))
    {
      squeezed = std::sqrt(2 * drop->mass * data.gravity * drop->height / k);
      add("rebound_by_height", 0.65, "1");
      add("rebound_height", 0.65 * drop->height, "m");
    }
    else
    {
      squeezed = std::get<solver::PressRig>(data.rig).peak / k;
      add("loop_return", 0.65, "1");
    }
    add("peak_force", k * squeezed, "N");
    add("greatest_compression", squeezed, "m");
    add("contact_time", 9e-3, "s");
    result.readings.push_back({"compression." + core(data).name, squeezed, "m", "made up", -1});
    if (squeezed > stops_above)
    {
      result.complete = false;
      result.stop_reason = "made to stop";
    }
    return result;
  }

  tools::TrialResult tried(const tools::TrialInput &trial)
  {
    const std::atomic<bool> never{false};
    tools::Job              job(
      [this](const solver::Case &data, const tools::SolveWish &wish, const tools::RunProgress &) {
        ++(wish.estimate_error ? n_whole : n_searching);
        return solved(data);
      },
      {}, {}, never);
    return tools::solve_trial(trial, job);
  }
};
} // namespace solemech::tests
