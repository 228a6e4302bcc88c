// SPDX-License-Identifier: Apache-2.0
// Reads by poll and read: an interrupt from the keyboard must end the wait, which a read of the standard
// library would begin again.
#include "tools/program/guess.h"

#include <fmt/format.h>
#include <poll.h>
#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstdio>
#include <string>

namespace solemech::tools
{
namespace
{
constexpr int         patience = 200;     ///< [ms] between looks at `interrupted`
constexpr std::size_t longest_line = 100; ///< characters that anyone would type

/// One line without its end; nothing at the end of input or after an interruption.
std::optional<std::string> typed_line(const std::atomic<bool> &interrupted)
{
  std::string line;
  while (!interrupted && line.size() < longest_line)
  {
    pollfd    input{STDIN_FILENO, POLLIN, 0};
    const int ready = poll(&input, 1, patience);
    if (ready == 0 || (ready < 0 && errno == EINTR))
      continue;
    char character = 0;
    if (ready < 0 || read(STDIN_FILENO, &character, 1) != 1)
      return std::nullopt;
    if (character == '\n')
      return line;
    line += character;
  }
  return interrupted ? std::nullopt : std::optional(line);
}

std::string stripped(const std::string &text)
{
  const auto first = text.find_first_not_of(" \t\r"), last = text.find_last_not_of(" \t\r.");
  return first == std::string::npos || last == std::string::npos ? "" : text.substr(first, last - first + 1);
}
} // namespace

std::optional<std::size_t> guess_from_terminal(std::size_t n_choices, const std::atomic<bool> &interrupted)
{
  const std::string prompt = fmt::format("your guess, 1 to {} (Enter: none): ", n_choices);
  for (;;)
  {
    fmt::print("{}", prompt);
    std::fflush(stdout);
    const auto line = typed_line(interrupted);
    if (!line)
    {
      fmt::print("\n");
      return std::nullopt;
    }
    const std::string text = stripped(*line);
    if (text.empty())
      return std::nullopt;
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error == std::errc() && end == text.data() + text.size() && number >= 1 && number <= n_choices)
      return number - 1;
    fmt::print("That is not one of the choices. ");
  }
}
} // namespace solemech::tools
