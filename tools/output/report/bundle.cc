// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/bundle.h"

// From bundle.S.
extern "C" {
extern const char solemech_report_script[], solemech_report_script_end[];
extern const char solemech_report_style[], solemech_report_style_end[];
}

namespace solemech::tools::report
{
std::string_view bundled_script()
{
  return {solemech_report_script,
          static_cast<std::size_t>(solemech_report_script_end - solemech_report_script)};
}

std::string_view bundled_style()
{
  return {solemech_report_style, static_cast<std::size_t>(solemech_report_style_end - solemech_report_style)};
}
} // namespace solemech::tools::report
