// SPDX-License-Identifier: Apache-2.0
// The report without scripts: sentence, numbers, readings and the section at rest and at greatest compression
// as inline SVG. Stands in <noscript>.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>

namespace solemech::tools::report
{
/// Markup for the inside of <noscript>; every text in it is escaped.
std::string still_view(const Page &page);
} // namespace solemech::tools::report
