// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/sheet.h"
#include "tools/language/reading_measure.h"

namespace solemech::tools
{
Probe probe_of(const solver::ReadingKind &kind, std::size_t bench, const std::string &name)
{
  const auto dimension = dimension_of(kind);
  return {name.empty() ? std::string(kind.on_sheet) : name,
          dimension,
          dimension == materials::Dimension::number ? std::string(kind.shown.unit) : "",
          bench,
          kind,
          "",
          {}};
}
} // namespace solemech::tools
