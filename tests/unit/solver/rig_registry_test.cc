// SPDX-License-Identifier: Apache-2.0
// Every kind of rig has a run of its own.
#include "solver/rigs/registry.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <vector>

using namespace solemech::solver;

TEST_CASE("every kind of rig is run by its own row of the table")
{
  SlideRig worn, whole;
  worn.wear = WearLife();
  whole.tread = Tread();
  std::vector<Result (*)(const Case &, const Resolution &, const RunOptions &)> runs;
  for (const Rig &rig : std::vector<Rig>{DropRig(), PressRig(), DurometerRig(), SlideRig(), worn, whole,
                                         AbrasionRig(), HoldRig()})
  {
    CHECK(rig_run(rig).kind == rig_kind(rig));
    CHECK(std::find(runs.begin(), runs.end(), rig_run(rig).run) == runs.end());
    runs.push_back(rig_run(rig).run);
  }
}
