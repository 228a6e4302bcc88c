// SPDX-License-Identifier: Apache-2.0
// solemech_twins [TRIALS] [SEED] [ACCURACY]: twin experiments on the solver, run by hand. Wanted: 85 to 95 %
// of the truths in the 90 % bands, no answer that leans by more than a quarter of a half band. Exit code 1
// otherwise.
#include "tests/support/twin_drop.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>

int main(int argc, char **argv)
{
  using namespace solemech::tests;
  const int      n_trials = argc > 1 ? std::max(1, std::atoi(argv[1])) : 100;
  const unsigned seed = argc > 2 ? unsigned(std::atoi(argv[2])) : 1;
  const double   accuracy = argc > 3 ? std::atof(argv[3]) : 0.02;
  const auto     count = twin_trials(drop_twin_bench(accuracy), n_trials, seed, [](const TwinCount &so_far) {
    if (so_far.n_trials % 10 == 0)
      std::cout << so_far.text() << std::endl;
  });
  std::cout << count.text() << '\n';
  const auto well = [](double share) { return share >= 0.85 && share <= 0.95; };
  const bool straight =
    std::all_of(count.lean.begin(), count.lean.end(), [](double lean) { return std::abs(lean) <= 0.25; });
  return well(count.parameters_share()) && well(count.predictions_share()) && straight ? 0 : 1;
}
