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

TEST_CASE("a half-space under constant heating", "[external]")
{
  const std::string source =
    "Carslaw & Jaeger, half-space under constant flux: rubber 0.25 W/(m K), 100 kW/m2";
  external_check({source, "rise after 0.1 s", 48.28, constant_flux_rise(rubber, 1e5, 0.1), printed, "K"});
  external_check({source, "rise after 0.5 s", 107.96, constant_flux_rise(rubber, 1e5, 0.5), printed, "K"});
  // Energy: the integral of the rise over the depth times rho c is q t.
  double    sum = 0;
  const int n = 2000;
  for (int i = 0; i < n; ++i)
    sum += constant_flux_rise(rubber, 1e5, 0.1, (i + 0.5) * 4e-3 / n) * 4e-3 / n;
  CHECK(sum * rubber.density * rubber.specific_heat == Approx(1e5 * 0.1).epsilon(1e-4));
  CHECK(constant_flux_rise(rubber, 1e5, 0) == 0);
}

TEST_CASE("heat divides by effusivity", "[external]")
{
  const std::string source = "two half-spaces, heat made between them (Carslaw & Jaeger)";
  external_check({source, "rubber's share on maple", 0.614, heat_share(rubber, maple), 2 * printed});
  external_check({source, "rubber's share on concrete", 0.315, heat_share(rubber, concrete), 2 * printed});
  const double flux = 0.6 * 0.3e6 * 1;
  external_check({source, "common rise on maple after 0.1 s, friction 0.6, 0.3 MPa, 1 m/s", 53.4,
                  shared_flux_rise(rubber, maple, flux, 0.1), 2 * printed, "K"});
  external_check({source, "common rise on concrete after 0.1 s, friction 0.6, 0.3 MPa, 1 m/s", 27.3,
                  shared_flux_rise(rubber, concrete, flux, 0.1), 2 * printed, "K"});
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
  const std::string source = "Jaeger 1942, moving band, quadrature of the published integral";
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

TEST_CASE("a moving round spot", "[external]")
{
  const std::string source =
    "Tian & Kennedy 1994, round spot of 50 um on rubber, 3 MPa, friction 0.8, 1 m/s (from memory)";
  external_check(
    {source, "greatest rise", 36.5, moving_spot_rise(rubber, 0.8 * 3e6, 50e-6, 1), 2 * printed, "K"});
  // A resting spot: q a/k at its centre (Carslaw & Jaeger); the published constant 1.273 rounds 4/pi.
  CHECK(moving_spot_rise(rubber, 1e5, 1e-3, 0) == Approx(1e5 * 1e-3 / 0.25).epsilon(2e-4));
}
