// SPDX-License-Identifier: Apache-2.0
// The error of what comes before the steps of a run: an inflated shape, a first touch. `run` ends with
// RunFailed then.
#pragma once

#include <stdexcept>

namespace solemech::solver
{
/// A balance or a shape that a run has to start from was not found; says where and what to try.
class NoBalance : public std::runtime_error
{
public:
  using std::runtime_error::runtime_error;
};
} // namespace solemech::solver
