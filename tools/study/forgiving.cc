// SPDX-License-Identifier: Apache-2.0
#include "tools/study/forgiving.h"

#include <fmt/format.h>

#include <new>
#include <stdexcept>

namespace solemech::tools
{
namespace
{
solver::Result not_answered(const std::string &reason)
{
  solver::Result result;
  result.complete = false;
  result.stop_reason = reason;
  return result;
}
} // namespace

Solve forgiving(const Solve &solve)
{
  return [solve](const solver::Case &setup, const SolveWish &wish, const RunProgress &progress) {
    try
    {
      return solve(setup, wish, progress);
    }
    catch (const std::invalid_argument &refusal)
    {
      return not_answered(refusal.what());
    }
    catch (const std::bad_alloc &)
    {
      return not_answered("not enough memory. Run it alone, or ask for a coarser accuracy");
    }
    catch (const std::exception &error)
    {
      return not_answered(
        fmt::format("a fault of the program, not of your input ({}). Please report it", error.what()));
    }
  };
}
} // namespace solemech::tools
