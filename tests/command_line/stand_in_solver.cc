// SPDX-License-Identifier: Apache-2.0
// Stands in for the solver in tests of the program: made-up results, at once. The environment may ask it to
// take its time (STAND_IN_SECONDS), to stop early (STAND_IN_STOPS; "at once": with no numbers at all; "with
// pictures": only runs that are to have them), to have a fault (STAND_IN_FAULT) or to refuse or trip over the
// cases of one label (STAND_IN_REFUSES, STAND_IN_TRIPS; "coarser runs": over those).
#include "tests/unit/output/results/synthetic.h"
#include "tools/program/failures.h"
#include "tools/program/full_answer.h"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <string_view>
#include <thread>

namespace
{
using namespace solemech;

std::atomic<bool> interrupted{false};

extern "C" void interrupt(int)
{
  interrupted = true;
}

bool has_unit(const solver::Case &setup)
{
  for (const auto &layer : setup.layers)
    if (layer.unit)
      return true;
  return false;
}

solver::Result made_up(const solver::Case &setup)
{
  if (std::holds_alternative<solver::PressRig>(setup.rig))
    return tests::synthetic_press().result;
  return has_unit(setup) ? tests::synthetic_forefoot().result : tests::synthetic_heel().result;
}

solver::Result solve(const solver::Case &setup, const tools::SolveWish &wish,
                     const tools::RunProgress &progress)
{
  if (std::getenv("STAND_IN_FAULT") != nullptr)
    throw std::logic_error("index 7 of 7");
  const auto is_label = [&](const char *variable) {
    const char *label = std::getenv(variable);
    return label != nullptr && setup.label == label;
  };
  if (is_label("STAND_IN_REFUSES"))
    throw std::invalid_argument("height = 7 is not allowed: give 8");
  const char *trips = std::getenv("STAND_IN_TRIPS");
  if (is_label("STAND_IN_TRIPS") ||
      (trips != nullptr && std::string_view(trips) == "coarser runs" && wish.level < 0))
    throw std::logic_error("index 7 of 7");
  auto        result = made_up(setup);
  const char *seconds = std::getenv("STAND_IN_SECONDS");
  const int   n_steps = seconds != nullptr ? static_cast<int>(50 * std::atof(seconds)) : 1;
  for (int i = 0; i < n_steps; ++i)
  {
    if (!progress(static_cast<double>(i) / n_steps, "falling"))
      break;
    if (seconds != nullptr)
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  const char *when = std::getenv("STAND_IN_STOPS");
  if (when != nullptr && (std::string_view(when) != "with pictures" || wish.pictures))
  {
    if (std::string_view(when) == "at once")
      result = {};
    result.complete = false;
    result.stop_reason = "the stand-in was asked to stop";
  }
  return result;
}
} // namespace

int main(int argc, char **argv)
{
  std::signal(SIGINT, interrupt);
  return tools::guarded([&] {
    return tools::full_answer(tools::read_command_line({argv + 1, argv + argc}), solve, interrupted);
  });
}
