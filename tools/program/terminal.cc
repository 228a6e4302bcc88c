// SPDX-License-Identifier: Apache-2.0
#include "tools/program/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdlib>

namespace solemech::tools
{
bool is_terminal(std::FILE *stream)
{
  return isatty(fileno(stream)) == 1;
}

int terminal_width(std::FILE *stream)
{
  winsize size{};
  if (ioctl(fileno(stream), TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
    return size.ws_col;
  return 100;
}

int page_width()
{
  return is_terminal(stdout) ? terminal_width(stdout) : 0;
}

bool wants_emphasis(std::FILE *stream)
{
  const char *no_color = std::getenv("NO_COLOR");
  const char *term = std::getenv("TERM");
  return is_terminal(stream) && (no_color == nullptr || *no_color == '\0') && term != nullptr &&
         std::string_view(term) != "dumb";
}

std::string heading(std::string_view text)
{
  return wants_emphasis(stdout) ? "\033[1m" + std::string(text) + "\033[0m" : std::string(text);
}
} // namespace solemech::tools
