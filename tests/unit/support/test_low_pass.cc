// SPDX-License-Identifier: Apache-2.0
// The filter against the gain that defines a Butterworth low-pass.
#include "tests/support/catch.h"
#include "tests/support/low_pass.h"

#include <algorithm>

using namespace solemech::tests;

TEST_CASE("the filter has the gain of a second-order Butterworth low-pass", "[metrics]")
{
  // Gain 1/sqrt(1 + (f/f_c)^4) (textbook); samples of 0.02 ms bend the frequency axis by less than 1e-4.
  constexpr double gain_tolerance = 1e-3;
  const double     interval = 2e-5, cutoff = 120;
  for (const double share : {0.25, 0.5, 1.0, 2.0, 4.0})
  {
    const double        frequency = share * cutoff;
    std::vector<double> samples;
    for (int i = 0; i * interval < 40 / frequency; ++i)
      samples.push_back(std::sin(2 * M_PI * frequency * i * interval));
    const auto   filtered = butterworth_low_pass(samples, interval, cutoff);
    const double gain = *std::max_element(filtered.end() - filtered.size() / 4, filtered.end());
    CHECK(gain == Approx(1 / std::sqrt(1 + std::pow(share, 4))).epsilon(gain_tolerance));
  }
  const auto level = butterworth_low_pass(std::vector<double>(20000, 3.0), interval, cutoff);
  CHECK(level.back() == Approx(3.0).epsilon(1e-9)); // has settled after 0.4 s
}
