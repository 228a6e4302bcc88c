// SPDX-License-Identifier: Apache-2.0
// Checks of a whole test program: what can be judged only after its last test case.
#pragma once

#include <functional>
#include <vector>

namespace solemech::tests
{
/// Called with true if every test case ran, false if only a selection did; says what is wrong and returns
/// false.
using EndCheck = std::function<bool(bool complete)>;

inline std::vector<EndCheck> &end_checks()
{
  static std::vector<EndCheck> checks;
  return checks;
}
} // namespace solemech::tests
