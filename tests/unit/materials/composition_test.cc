// SPDX-License-Identifier: Apache-2.0
// Materials put together from their data: sums, shares, temperature, and the messages for bad numbers.
#include "materials/foam.h"
#include "materials/friction.h"
#include "materials/isotropic_plate.h"
#include "materials/rubber.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

namespace
{
FoamData some_foam()
{
  FoamData data;
  data.network = {{0.4e6, 8, 0.1}, {0.2e6, -2, 0}};
  data.relative_density = 0.2;
  data.closed_cells = 0.9;
  data.densification_modulus = 20e3;
  data.relaxing = {{0.06, 1e-3}, {0, 1}, {0.05, 1e-2}};
  data.slipping = {{0.1, 0.02}, {0.1, 0.1}};
  return data;
}
} // namespace

TEST_CASE("A foam is the sum of its parts", "[foam]")
{
  const auto               foam = make_foam(some_foam(), {}, 296.15, 101325);
  const LogStrains<double> e{-0.5, 0.03, 0.02};
  const auto               sum = OgdenHill{0.4e6, 8, 0.1}.response(e) + OgdenHill{0.2e6, -2, 0}.response(e) +
                   CellGas{0.2, 0.9, 101325, 1}.response(e) + Densification{0.2, 20e3, 3}.response(e);
  const auto got = foam.response(e);
  CHECK(got.energy == Approx(sum.energy).epsilon(1e-14));
  for (std::size_t a = 0; a < 3; ++a)
    CHECK(got.stress[a] == Approx(sum.stress[a]).epsilon(1e-14));
  CHECK(foam.smallest_volume_ratio() == Approx(0.216).epsilon(1e-14));
}

TEST_CASE("Small-strain constants of network and foam", "[foam]")
{
  const auto   foam = make_foam(some_foam(), {}, 296.15, 101325);
  const auto   net = foam.network_constants();
  const double kappa = 0.8e6 * (1.0 / 3 + 0.1) + 0.4e6 / 3;
  CHECK(net.shear_modulus == Approx(0.6e6).epsilon(1e-14));
  CHECK(net.bulk_modulus == Approx(kappa).epsilon(1e-14));
  // Isotropic elasticity: E = 2 mu (1 + nu) = 3 kappa (1 - 2 nu).
  const auto all = foam.equilibrium_constants();
  CHECK(all.bulk_modulus == Approx(kappa + 0.9 * 101325 / 0.8).epsilon(1e-14));
  CHECK(all.youngs_modulus == Approx(2 * 0.6e6 * (1 + all.poisson_ratio)).epsilon(1e-14));
  CHECK(all.youngs_modulus == Approx(3 * all.bulk_modulus * (1 - 2 * all.poisson_ratio)).epsilon(1e-13));
  // One term alone has the Poisson ratio it was given: beta = nu/(1 - 2 nu).
  FoamData simple;
  simple.network = {{1e6, 5, 0.3 / 0.4}};
  CHECK(make_foam(simple, {}, 296.15, 101325).network_constants().poisson_ratio ==
        Approx(0.3).epsilon(1e-14));
}

TEST_CASE("Branch shares refer to the network, gas excluded", "[foam]")
{
  const auto foam = make_foam(some_foam(), {}, 296.15, 101325);
  const auto net = foam.network_constants();
  REQUIRE(foam.branches.size() == 4); // the empty one is left out
  CHECK(foam.branches[1].shear_modulus == Approx(0.05 * net.shear_modulus).epsilon(1e-14));
  CHECK(foam.branches[1].bulk_modulus == Approx(0.05 * net.bulk_modulus).epsilon(1e-14));
  CHECK_FALSE(foam.branches[1].slips());
  CHECK(foam.branches[3].cap == 0.1);
  CHECK(foam.branches[3].relaxation_time == 5);
}

TEST_CASE("Zero relative density means neither gas nor densification", "[foam]")
{
  auto data = some_foam();
  data.relative_density = 0;
  const auto foam = make_foam(data, {}, 296.15, 101325);
  CHECK_FALSE(foam.has_gas());
  CHECK_FALSE(foam.has_densification());
}

TEST_CASE("Warmth shifts times and moduli", "[temperature]")
{
  // Arrhenius: 50 kJ/mol between 23 and 33 C is exp[-50000/8.314462618 (1/296.15 - 1/306.15)] = 0.5152 (by
  // hand).
  const ThermalData thermal{296.15, 50e3, -0.01};
  CHECK(time_shift(thermal, 306.15) == Approx(0.5152).margin(1e-4));
  CHECK(modulus_factor(thermal, 306.15) == Approx(std::exp(-0.1)).epsilon(1e-14));
  const auto warm = make_foam(some_foam(), thermal, 306.15, 101325),
             cold = make_foam(some_foam(), thermal, 296.15, 101325);
  CHECK(warm.network[0].shear_modulus == Approx(0.4e6 * std::exp(-0.1)).epsilon(1e-14));
  CHECK(warm.branches[0].relaxation_time < cold.branches[0].relaxation_time);
  CHECK(warm.branches[3].relaxation_time == cold.branches[3].relaxation_time);
  CHECK(warm.gas.bulk_modulus() == cold.gas.bulk_modulus());
  CHECK_THROWS_AS(time_shift(thermal, 23), InvalidParameter); // degrees Celsius in place of kelvin
}

TEST_CASE("Plates and rubbers from their data", "[plate][rubber]")
{
  PlateData  plate{60e9, 0.3, {{0.1, 1e-3}}};
  const auto made = make_plate(plate, {}, 296.15);
  const auto c = small_strain_constants(made.elastic.shear_modulus, made.elastic.bulk_modulus);
  CHECK(c.youngs_modulus == Approx(60e9).epsilon(1e-14));
  CHECK(c.poisson_ratio == Approx(0.3).epsilon(1e-13));
  CHECK(made.branches.at(0).bulk_modulus == Approx(0.1 * made.elastic.bulk_modulus).epsilon(1e-14));

  RubberData rubber{0.5e6, 0, 0, 0.1e6, 200e6, {{0.2, 1e-3}}};
  const auto r = make_rubber(rubber, {}, 296.15);
  CHECK(r.isochoric.shear_modulus() == Approx(1.2e6).epsilon(1e-14));
  CHECK(r.branches.at(0).shear_modulus == Approx(0.24e6).epsilon(1e-14));
  CHECK(r.branches.at(0).bulk_modulus == 0);
  rubber.bulk_modulus = 20e6;
  CHECK_THROWS_AS(make_rubber(rubber, {}, 296.15), InvalidParameter);
}

TEST_CASE("Bad numbers are named with their range", "[errors]")
{
  auto data = some_foam();
  data.relative_density = 1.2;
  CHECK_THROWS_WITH(
    make_foam(data, {}, 296.15, 101325),
    "relative density = 1.2 is not allowed: give a share of the polymer density from 0 to below 0.9");
  data = some_foam();
  data.network[1].exponent = 0;
  CHECK_THROWS_AS(make_foam(data, {}, 296.15, 101325), InvalidParameter);
  data = some_foam();
  data.network.clear();
  CHECK_THROWS_AS(make_foam(data, {}, 296.15, 101325), InvalidParameter);
  data = some_foam();
  data.slipping[0].cap = -0.1;
  CHECK_THROWS_AS(make_foam(data, {}, 296.15, 101325), InvalidParameter);
  CHECK_THROWS_AS(check(CoulombFriction{std::nan("")}), InvalidParameter);
  CHECK(CoulombFriction{0.6}.limit(1e5) == Approx(6e4).epsilon(1e-14));
}
