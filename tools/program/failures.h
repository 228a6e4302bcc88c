// SPDX-License-Identifier: Apache-2.0
// Errors in words for people, and the exit code of each kind. The only place that sees raw exceptions.
#pragma once

#include "tools/program/exit_codes.h"

#include <exception>
#include <string_view>

namespace solemech::tools
{
/// Prints what went wrong and what to do about it to standard error.
Exit explain(const std::exception &error);

/// Puts an answer on standard output at once, before its files are written. Never throws: a disk that is full
/// and a reader that has gone cost the files nothing, and flush_output() tells.
void print_now(std::string_view text);

/// Writes out standard output; says so when that fails. A reader that wanted no more is no failure.
Exit flush_output();

/// A file that reaches the size the system allows is told like a full disk, and a reader of the output that
/// goes (`| head`) does not end the work, instead of either ending the process.
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
