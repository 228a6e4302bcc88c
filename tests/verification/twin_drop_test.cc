// SPDX-License-Identifier: Apache-2.0
// Twin experiments on the solver: truths in 90 % bands. Few trials here; `solemech_twins` does a hundred.
#include "tests/support/catch.h"
#include "tests/support/twin_drop.h"

#include <iostream>

using namespace solemech;

TEST_CASE("stiffness and loss of a pad are found again from noisy readings of one drop")
{
  constexpr int n_trials = 4;
  const auto    count = tests::twin_trials(tests::drop_twin_bench(0.05), n_trials, 5);
  std::cout << count.text() << '\n';
  CHECK(count.n_not_converged == 0);
  // Of 12 and of 16 values that lie in their bands with 90 %: fewer than 8 and 11 would happen once in 200
  // times or less were they independent (binomial distribution).
  CHECK(count.n_parameters_in >= 8);
  CHECK(count.n_predictions_in >= 11);
}
