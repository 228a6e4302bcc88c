// SPDX-License-Identifier: Apache-2.0
// Errors in words for people, and the exit code of each kind. The only place that sees raw exceptions.
#pragma once

#include "tools/program/exit_codes.h"

#include <exception>

namespace solemech::tools
{
/// Prints what went wrong and what to do about it to standard error.
Exit explain(const std::exception &error);

/// Writes out standard output; says so when that fails.
Exit flush_output();

/// A file that reaches the size the system allows is told like a full disk, instead of ending the process.
void take_limits_as_errors();

/// Runs `work`, turns whatever it throws into a message, and returns the exit code of the process. Standard
/// output is flushed before: a full disk shows only then.
template <typename Work>
int guarded(const Work &work)
{
  take_limits_as_errors();
  Exit exit = Exit::internal;
  try
  {
    exit = work();
  }
  catch (const std::exception &error)
  {
    exit = explain(error);
  }
  catch (...)
  {
    exit = explain(std::exception());
  }
  const Exit flushed = flush_output();
  return static_cast<int>(exit == Exit::ok ? flushed : exit);
}
} // namespace solemech::tools
