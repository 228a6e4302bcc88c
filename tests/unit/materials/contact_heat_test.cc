// SPDX-License-Identifier: Apache-2.0
// Contact heat against worked numbers of the textbook solutions named in the header.
#include "materials/contact_heat.h"
#include "tests/external/check.h"

#include <fmt/format.h>

using namespace solemech::materials;
using solemech::tests::external_check;

namespace
{
constexpr double     printed = 1e-3; ///< four digits of the tables
const HeatProperties rubber{0.25, 1150, 1900}, maple{0.18, 705, 1700}, concrete{1.28, 2300, 880};
} // namespace

TEST_CASE("a half-space under constant heating")
{
  // Carslaw & Jaeger, by hand.
  CHECK(constant_flux_rise(rubber, 1e5, 0.1) == Approx(48.28).epsilon(printed));
  CHECK(constant_flux_rise(rubber, 1e5, 0.5) == Approx(107.96).epsilon(printed));
  // Energy: the integral of the rise over the depth times rho c is q t.
  double    sum = 0;
  const int n = 2000;
  for (int i = 0; i < n; ++i)
    sum += constant_flux_rise(rubber, 1e5, 0.1, (i + 0.5) * 4e-3 / n) * 4e-3 / n;
  CHECK(sum * rubber.density * rubber.specific_heat == Approx(1e5 * 0.1).epsilon(1e-4));
  CHECK(constant_flux_rise(rubber, 1e5, 0) == 0);
}

TEST_CASE("heat divides by effusivity")
{
  // Two half-spaces, heat made between them (Carslaw & Jaeger), by hand: friction 0.6, 0.3 MPa, 1 m/s, 0.1 s.
  CHECK(heat_share(rubber, maple) == Approx(0.614).epsilon(2 * printed));
  CHECK(heat_share(rubber, concrete) == Approx(0.315).epsilon(2 * printed));
  const double flux = 0.6 * 0.3e6 * 1;
  CHECK(shared_flux_rise(rubber, maple, flux, 0.1) == Approx(53.4).epsilon(2 * printed));
  CHECK(shared_flux_rise(rubber, concrete, flux, 0.1) == Approx(27.3).epsilon(2 * printed));
}

TEST_CASE("a sliding lug leaves more heat in the floor than a resting one")
{
  const double resting = heat_share(rubber, maple);
  CHECK(sliding_heat_share(rubber, maple, 6e-3, 0, 0.1) == Approx(resting).epsilon(1e-12));
  CHECK(sliding_heat_share(rubber, maple, 6e-3, 1, 0) == Approx(resting).epsilon(1e-12));
  CHECK(sliding_heat_share(rubber, maple, 6e-3, 1, 0.1) < resting);
  // Continuous where the lug has left its first floor altogether.
  CHECK(sliding_heat_share(rubber, maple, 6e-3, 1, 5.9999e-3) ==
        Approx(sliding_heat_share(rubber, maple, 6e-3, 1, 6.0001e-3)).epsilon(1e-4));
}

TEST_CASE("a moving band", "[external]")
{
  const std::string source = "Jaeger 1942, moving band, quadrature of his integral";
  struct Row
  {
    double peclet, greatest, place, mean;
  };
  for (const auto &r :
       {Row{0.5, 1.3042, 0.537, 1.1217}, Row{1, 0.9919, 0.666, 0.7999}, Row{2, 0.7368, 0.775, 0.5575},
        Row{5, 0.4846, 0.876, 0.3450}, Row{10, 0.3485, 0.924, 0.2413}, Row{20, 0.2489, 0.955, 0.1695}})
  {
    const MovingBand band(r.peclet);
    const auto       at = fmt::format(", speed number {:g}", r.peclet);
    external_check({source, "greatest rise over q b/k" + at, r.greatest, band.greatest(), printed});
    external_check({source, "mean rise over q b/k" + at, r.mean, band.mean(), printed});
    external_check(
      {source, "hottest place behind the centre, over b" + at, r.place, -band.hottest_place(), 2 * printed});
  }
  // Fast limit: 2/sqrt(pi L), mean two thirds of it (textbook); the remainder falls with L.
  const MovingBand fast(5000);
  CHECK(fast.greatest() == Approx(2 / std::sqrt(std::numbers::pi * 5000)).epsilon(2e-3));
  CHECK(fast.mean() == Approx(4 / (3 * std::sqrt(std::numbers::pi * 5000))).epsilon(2e-3));
  CHECK_THROWS_AS(MovingBand(0), InvalidParameter);
}

TEST_CASE("a moving round spot")
{
  // Tian & Kennedy 1994 (from memory), by hand: round spot of 50 um, 3 MPa, friction 0.8, 1 m/s.
  CHECK(moving_spot_rise(rubber, 0.8 * 3e6, 50e-6, 1) == Approx(36.5).epsilon(2 * printed));
  // A resting spot: q a/k at its centre (Carslaw & Jaeger); their constant 1.273 rounds 4/pi.
  CHECK(moving_spot_rise(rubber, 1e5, 1e-3, 0) == Approx(1e5 * 1e-3 / 0.25).epsilon(2e-4));
}
