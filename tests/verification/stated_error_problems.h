// SPDX-License-Identifier: Apache-2.0
// Problems whose readings are known from outside the program or from a far finer run, for the question
// whether the error that the program states covers the true one: columns and layered stacks (independent
// integrations of their laws), the bench problem B1 (three independent codes), presses on both, balls and a
// bare air unit (finer runs).
#pragma once

#include "solver/run.h"
#include "tests/support/foam_cases.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace solemech::tests
{
/// A reading as it is known, and how well.
struct KnownReading
{
  double value = 0, spread = 0;
};

struct KnownProblem
{
  std::string                         name;
  solver::Case                        input;
  std::map<std::string, KnownReading> readings;
};

/// Columns, layered stacks, presses on columns: integrated independently.
std::vector<KnownProblem> integrated_problems();
/// B1 dropped and pressed slowly: three independent codes.
std::vector<KnownProblem> listed_problems();

/// One comparison.
struct ErrorRow
{
  std::string problem, reading;
  double      accuracy = 0, deviation = 0, stated = 0, spread = 0;
  double      scale =
    0; ///< what errors count against: one for shares, for energies what was put in, else the value
  bool inside() const { return std::abs(deviation) <= stated + spread; }
};

/// Runs a problem at an accuracy and compares every reading that is known.
std::vector<ErrorRow> compared(const KnownProblem &problem, double accuracy);
} // namespace solemech::tests
