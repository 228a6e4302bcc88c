// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/print_options.h"

#include "tools/solemech/terminal.h"

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
