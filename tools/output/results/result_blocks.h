// SPDX-License-Identifier: Apache-2.0
// Values of the solver and of a record that leave the program as they are.
#pragma once

#include "tools/language/blocks.h"
#include "tools/output/results/run_record.h"

// Tables: a row is read as one line.
// clang-format off
namespace solemech::solver
{
constexpr auto block_of(const Warning *)
{
  using tools::blocks::field;
  using S = Warning;
  return tools::blocks::block<S>("Warning", "What to mind of a reading or of the run.",
    field(&S::reading, "reading", "machine name or \"\""),
    field(&S::text, "text"));
}

constexpr auto block_of(const SolverFacts *)
{
  using tools::blocks::field;
  using S = SolverFacts;
  return tools::blocks::block<S>("SolverFacts", "How a calculation went.",
    field(&S::unknowns, "unknowns"), field(&S::cells, "cells"), field(&S::steps, "steps"),
    field(&S::repeated_steps, "repeated_steps"), field(&S::iterations, "iterations"),
    field(&S::descents, "descents", "steps on which the stack fell into another state"),
    field(&S::given_up, "given_up", "runs that failed and were taken again with a finer mesh"),
    field(&S::seconds, "seconds", "wall time of the solve", "s"),
    field(&S::ledger_residual, "ledger_residual", "over the energy put in"),
    field(&S::ledger_numerical, "ledger_numerical", "over the energy put in"));
}
} // namespace solemech::solver

namespace solemech::tools
{
constexpr auto block_of(const Series *)
{
  using S = Series;
  return blocks::block<S>("Series", "What a series varies.",
    blocks::field(&S::quantity, "quantity"),
    blocks::field(&S::unit, "unit"),
    blocks::field(&S::values, "values", "one a run"),
    blocks::field(&S::groups, "groups", "one a run: runs of one group are joined by a line"));
}
} // namespace solemech::tools
// clang-format on
