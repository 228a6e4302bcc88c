// SPDX-License-Identifier: Apache-2.0
// solemech-solve: the solver program. Takes the arguments of `solemech run` unchanged; not meant to be called
// by hand. The first interrupt from the keyboard lets the runs stop in order, a second one leaves at once.
#include "solver/run.h"
#include "tools/output/results/energy_picture.h"
#include "tools/program/failures.h"
#include "tools/program/full_answer.h"

#include <unistd.h>

#include <csignal>

namespace
{
using namespace solemech;

std::atomic<bool> interrupted{false};
static_assert(std::atomic<bool>::is_always_lock_free, "needed in a signal handler");

extern "C" void interrupt(int)
{
  if (interrupted.exchange(true))
    _exit(static_cast<int>(tools::Exit::interrupted));
}

solver::Result incomplete(solver::Result result, const std::string &reason)
{
  result.complete = false;
  result.stop_reason = reason;
  return result;
}

solver::Result solve_case(const solver::Case &setup, const tools::SolveWish &wish,
                          const tools::RunProgress &progress)
{
  solver::RunOptions options;
  options.progress = progress;
  options.pictures = wish.pictures;
  options.estimate_error = wish.estimate_error;
  options.level = wish.level;
  try
  {
    auto result = solver::run(setup, options);
    // The account of the solver closes; what is shown of it has to add up as well.
    if (const auto reason = tools::unaccounted_text(setup, result); !reason.empty())
      return incomplete(std::move(result), reason);
    return result;
  }
  catch (const solver::RunFailed &failure)
  {
    return incomplete(failure.partial, failure.what());
  }
  catch (const solver::RunStopped &)
  {
    return incomplete({}, "interrupted");
  }
}
} // namespace

int main(int argc, char **argv)
{
  std::signal(SIGINT, interrupt);
  return tools::guarded([&] {
    return tools::full_answer(tools::read_command_line({argv + 1, argv + argc}), solve_case, interrupted);
  });
}
