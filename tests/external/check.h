// SPDX-License-Identifier: Apache-2.0
// How a test makes an outside check, fails with it, and keeps its row for the table:
//   external_check({.source = "Hertz (handbook)", .what = "force at 2 mm sink", .expected = 41.442,
//                   .obtained = force, .relative_tolerance = 0.02, .unit = "N"});
// Link the test with solemech_external_rows(<test>) in its CMakeLists.txt.
#pragma once

#include "tests/external/external_check.h"
#include "tests/support/catch.h"

namespace solemech::tests
{
inline void external_check(const ExternalCheck &check)
{
  keep_row(check);
  INFO(check.source << ": " << check.what << " [" << check.unit << "]");
  INFO("expected " << check.expected << ", obtained " << check.obtained << ", deviation "
                   << 100 * check.deviation() << " %");
  CHECK(check.deviation() <= check.relative_tolerance);
}
} // namespace solemech::tests
