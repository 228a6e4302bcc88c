// SPDX-License-Identifier: Apache-2.0
// Script and style of the page, as committed in dist/ and built into the program.
#pragma once

#include <string_view>

namespace solemech::tools::report
{
std::string_view bundled_script();
std::string_view bundled_style();
} // namespace solemech::tools::report
