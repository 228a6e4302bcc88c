// SPDX-License-Identifier: Apache-2.0
// Gas in closed cells against the closed forms of Gibson & Ashby (Cellular Solids, 2nd ed. 1997) for no
// lateral strain: isothermal sigma = p0 eps/(1 - eps - R), adiabatic p0 {[(1 - R)/(1 - eps - R)]^1.4 - 1};
// and the densification pressure against its own limits.
#include "materials/cell_gas.h"
#include "materials/densification.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

TEST_CASE("Cell gas pressure matches the table of the closed forms", "[cell_gas]")
{
  struct Row
  {
    double density;
    double isothermal[4], adiabatic[4];
  };
  const double     strain[] = {0.10, 0.25, 0.40, 0.50};
  const Row        rows[] = {{0.10, {12.67, 38.97, 81.06, 126.66}, {18.16, 58.48, 129.40, 214.01}},
                             {0.16, {13.69, 42.93, 92.11, 149.01}, {19.67, 64.83, 149.21, 258.12}},
                             {0.20, {14.48, 46.06, 101.33, 168.88}, {20.83, 69.89, 166.07, 298.69}},
                             {0.25, {15.59, 50.66, 115.80, 202.65}, {22.48, 77.42, 193.19, 370.40}}};
  constexpr double last_digit = 6; // [Pa], the table is rounded to 0.01 kPa
  for (const auto &row : rows)
    for (int i = 0; i < 4; ++i)
    {
      CAPTURE(row.density, strain[i]);
      const double             l = 1 - strain[i];
      const LogStrains<double> e{std::log(l), 0, 0};
      const CellGas            slow{row.density, 1, 101325, 1}, fast{row.density, 1, 101325, 1.4};
      CHECK(slow.pressure(l) == Approx(1e3 * row.isothermal[i]).margin(last_digit).epsilon(0));
      CHECK(fast.pressure(l) == Approx(1e3 * row.adiabatic[i]).margin(last_digit).epsilon(0));
      CHECK(-slow.response(e).stress[0] / l == Approx(slow.pressure(l)).epsilon(1e-12));
      CHECK(-fast.response(e).stress[0] / l == Approx(fast.pressure(l)).epsilon(1e-12));
    }
}

TEST_CASE("Cell gas energy is the integral of its pressure", "[cell_gas]")
{
  // Isothermal, by hand: phi p_a {(1 - J) (-1) + (1 - R) ln[(1 - R)/(J - R)]}.
  const double r = 0.2, j = 0.55, p = 101325;
  const auto   w = CellGas{r, 0.7, p, 1}.response(LogStrains<double>{std::log(j), 0, 0}).energy;
  CHECK(w == Approx(0.7 * p * ((1 - r) * std::log((1 - r) / (j - r)) - (1 - j))).epsilon(1e-12));
  // n = 1.4, by hand: the adiabatic work of the gas less the work of the atmosphere.
  const auto a = CellGas{r, 1, p, 1.4}.response(LogStrains<double>{std::log(j), 0, 0}).energy;
  CHECK(a == Approx(p * ((1 - r) / 0.4 * (std::pow((1 - r) / (j - r), 0.4) - 1) - (1 - j))).epsilon(1e-12));
  // Open cells carry nothing.
  CHECK(CellGas{r, 0, p, 1}.response(LogStrains<double>{std::log(j), 0, 0}).energy == 0);
}

TEST_CASE("Densification is silent in tension and grows without bound", "[densification]")
{
  const Densification law{0.2, 50e3, 3};
  for (const double j : {1.0, 1.2, 2.0})
    CHECK(law.response(LogStrains<double>{std::log(j), 0, 0}).stress[0] == 0);
  // By hand at x = 1/2 (J = 0.6): p = kappa_d (8 - 1 - 1.5) = 5.5 kappa_d,
  // energy = kappa_d (1 - R) [(4 - 1)/2 - 1/2 - 3/8] = 0.625 kappa_d (1 - R).
  const auto half = law.response(LogStrains<double>{std::log(0.6), 0, 0});
  CHECK(-half.stress[0] / 0.6 == Approx(5.5 * 50e3).epsilon(1e-12));
  CHECK(half.energy == Approx(0.625 * 50e3 * 0.8).epsilon(1e-12));
  const double limit = admissible_volume_ratio(0.2);
  CHECK(limit == Approx(0.216).epsilon(1e-14));
  CHECK(-law.response(LogStrains<double>{std::log(limit), 0, 0}).stress[0] > 1e4 * 50e3);
}
