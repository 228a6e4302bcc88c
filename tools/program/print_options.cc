// SPDX-License-Identifier: Apache-2.0
#include "tools/program/print_options.h"

#include "tools/program/terminal.h"

namespace solemech::tools
{
SummaryOptions print_options(bool details, Lengths lengths)
{
  SummaryOptions options;
  options.lengths = lengths;
  options.details = details;
  options.emphasis = wants_emphasis(stdout);
  options.width = terminal_width(stdout);
  return options;
}
} // namespace solemech::tools
