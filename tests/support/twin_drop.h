// SPDX-License-Identifier: Apache-2.0
// The twin bench on the solver itself: a foam pad under a drop weight, unknown stiffness and loss. Invented
// bench.
#pragma once

#include "tests/support/twin_trials.h"

namespace solemech::tests
{
/// Pad of the library's soft foam, 60 mm wide and 22 mm thick, 1.2 kg from 400 mm. Unknown: a factor on the
/// stiffness of the network (30 %), one on its loss (all branches, 35 %) and the density of the foam's cells
/// (10 %). Readings: rebound
/// +-5 mm (eye and rule), peak force, compression and contact time +-4 %. Runs on two threads.
TwinBench drop_twin_bench(double accuracy);
} // namespace solemech::tests
