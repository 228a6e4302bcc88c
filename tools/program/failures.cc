// SPDX-License-Identifier: Apache-2.0
#include "tools/program/failures.h"

#include "solver/results/result_check.h"
#include "tools/language/problem.h"
#include "tools/language/shown_text.h"
#include "tools/program/command_line.h"
#include "tools/program/places.h"

#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

#include <csignal>
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
  const std::string line = fmt::format("solemech: {}\n", materials::shown_text(text, true));
  std::fwrite(line.data(), 1, line.size(), stderr);
}

Exit out_of_memory()
{
  say(
    "not enough memory. Close other programs, run fewer cases at once, set a coarser accuracy, or allow more "
    "with `ulimit -v unlimited` and `ulimit -u unlimited`.");
  return Exit::run_failed;
}

/// Whether standard output is a pipe that nobody reads any more.
bool reader_has_gone()
{
  pollfd output{STDOUT_FILENO, POLLOUT, 0};
  return poll(&output, 1, 0) == 1 && (output.revents & POLLERR) != 0;
}

/// What the system would not give: memory or a thread, a file, room on the disk.
Exit explain_refusal(const std::system_error &error)
{
  const auto code = error.code();
  if (code == std::errc::not_enough_memory || code == std::errc::resource_unavailable_try_again)
    return out_of_memory();
  if (code == std::errc::broken_pipe)
    return Exit::ok;
  // A long answer meets the full disk before its end; flush_output() says so.
  if (code == std::errc::no_space_on_device && std::ferror(stdout) != 0)
    return Exit::results;
  const char *cure = code == std::errc::too_many_files_open ? " Allow more with `ulimit -n 1024`." : "";
  if (const auto *file_error = dynamic_cast<const std::filesystem::filesystem_error *>(&error))
    say(fmt::format("cannot use '{}': {}.{}", file_error->path1().string(), code.message(), cure));
  else
    say(fmt::format("the system refused a request: {}.{}", error.what(), cure));
  return Exit::results;
}
} // namespace

void take_limits_as_errors()
{
  std::signal(SIGXFSZ, SIG_IGN);
  std::signal(SIGPIPE, SIG_IGN);
}

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
  if (as<std::bad_alloc>(error) != nullptr)
    return out_of_memory();
  if (const auto *refused = as<std::system_error>(error))
    return explain_refusal(*refused);
  say(fmt::format("a fault of the program, not of your input ({}). Please report it, with the case file and "
                  "the output of `solemech version --verbose`.",
                  error.what()));
  return Exit::internal;
}

void print_now(std::string_view text)
{
  std::fwrite(text.data(), 1, text.size(), stdout);
  std::fflush(stdout);
}

Exit flush_output()
{
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0)
    return Exit::ok;
  if (reader_has_gone())
    return Exit::ok;
  say("cannot write to standard output: is the disk full?");
  return Exit::results;
}
} // namespace solemech::tools
