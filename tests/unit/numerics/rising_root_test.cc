// SPDX-License-Identifier: Apache-2.0
// Roots of rising functions against closed forms and Boost.Math's Lambert function.
#include "tests/support/catch.h"

#include "numerics/rising_root.h"
#include <boost/math/special_functions/lambert_w.hpp>

#include <cmath>

using solemech::numerics::rising_root;

namespace
{
/// The iteration ends when both ends of the interval agree to a few units of the last digit.
constexpr double last_digits = 1e-15;
} // namespace

TEST_CASE("the root of a rising function is found to the last digits", "[root]")
{
  const double value = GENERATE(1e-9, 0.3, 2.0, 1e6);
  INFO("value " << value);
  CHECK(rising_root([&](double x) { return x * x * x - value; }, 0, 1e3) ==
        Approx(std::cbrt(value)).epsilon(last_digits));
  CHECK(rising_root([&](double x) { return std::log(x) - std::log(value); }, 1e-12, 1e12) ==
        Approx(value).epsilon(1e-14)); // the logarithm has lost a digit
  CHECK(rising_root([&](double x) { return x * std::exp(x) - value; }, 0, 20) ==
        Approx(boost::math::lambert_w0(value)).epsilon(last_digits));
}

TEST_CASE("a bend or a flat stretch does not mislead the search for a root", "[root]")
{
  // Where the slope jumps a thousandfold at the root, and where it is almost none over nine tenths of the
  // way.
  CHECK(rising_root([](double x) { return x < 0.7 ? x - 0.7 : 1e3 * (x - 0.7); }, 0, 1) ==
        Approx(0.7).epsilon(last_digits));
  CHECK(rising_root([](double x) { return std::pow(x, 31) - 0.5; }, 0, 1) ==
        Approx(std::pow(0.5, 1.0 / 31)).epsilon(last_digits));
}

TEST_CASE("a root that lies outside gives the end that is nearer to it", "[root]")
{
  const auto shifted = [](double root) { return [root](double x) { return x - root; }; };
  CHECK(rising_root(shifted(-1), 0, 2) == 0);
  CHECK(rising_root(shifted(0), 0, 2) == 0);
  CHECK(rising_root(shifted(2), 0, 2) == 2);
  CHECK(rising_root(shifted(3), 0, 2) == 2);
}
