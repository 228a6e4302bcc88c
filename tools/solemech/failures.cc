// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/failures.h"

#include "materials/problem.h"
#include "solver/result_check.h"
#include "tools/solemech/command_line.h"
#include "tools/solemech/places.h"

#include <fmt/format.h>

#include <cstdio>
#include <filesystem>
#include <new>
#include <stdexcept>
#include <system_error>

namespace solemech::tools
{
namespace
{
template <typename Error>
const Error *as(const std::exception &error)
{
  return dynamic_cast<const Error *>(&error);
}

/// Says it without throwing: the terminal itself may be what failed.
void say(std::string_view text)
{
  const std::string line = fmt::format("solemech: {}\n", text);
  std::fwrite(line.data(), 1, line.size(), stderr);
}
} // namespace

Exit explain(const std::exception &error)
{
  if (as<UsageError>(error) != nullptr)
  {
    say(error.what());
    return Exit::usage;
  }
  if (as<std::invalid_argument>(error) != nullptr)
  {
    // Constructors of laws and shapes name the entry, the value and the range.
    say(fmt::format("{}.", error.what()));
    return Exit::usage;
  }
  if (as<materials::CaseError>(error) != nullptr)
  {
    // One problem after the other, each with its own place: no prefix, so that editors can jump to them.
    const std::string_view text = error.what();
    std::fwrite(text.data(), 1, text.size(), stderr);
    if (!text.ends_with('\n'))
      std::fputc('\n', stderr);
    return Exit::usage;
  }
  if (as<MissingPart>(error) != nullptr || as<solver::ResultsError>(error) != nullptr)
  {
    say(error.what());
    return Exit::results;
  }
  if (const auto *file_error = as<std::filesystem::filesystem_error>(error))
  {
    say(fmt::format("cannot use '{}': {}.", file_error->path1().string(), file_error->code().message()));
    return Exit::results;
  }
  if (const auto *refused = as<std::system_error>(error))
  {
    // A long answer meets the full disk before its end; flush_output() says so.
    if (refused->code() == std::errc::no_space_on_device && std::ferror(stdout) != 0)
      return Exit::results;
    say(fmt::format("the system refused a request: {}.", error.what()));
    return Exit::results;
  }
  if (as<std::bad_alloc>(error) != nullptr)
  {
    say("not enough memory. Close other programs, run fewer cases at once, or ask for a coarser accuracy.");
    return Exit::run_failed;
  }
  say(
    fmt::format("a fault of the program, not of your input ({}). Please report it with the case file and the "
                "answer of `solemech version --verbose`.",
                error.what()));
  return Exit::internal;
}

Exit flush_output()
{
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0)
    return Exit::ok;
  say("cannot write to standard output: is the disk full?");
  return Exit::results;
}
} // namespace solemech::tools
