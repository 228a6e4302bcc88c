// SPDX-License-Identifier: Apache-2.0
// Ogden-Hill network against the closed forms of homogeneous states (Hill 1978; standard textbook results):
// uniaxial with free sides l_t = l^-nu, P = 2 mu/(alpha l) (l^alpha - l^(-alpha nu)); confined P = 2
// mu/(alpha l) (l^alpha - l^(-alpha beta)); simple shear; hydrostatic. Parameters mu = 1.05 MPa, alpha = 4
// are the pair published for an EVA midsole (Verdejo & Mills, J. Biomech. 37 (2004), abstract); the tabled
// numbers are arithmetic of the formulas, done outside the project.
#include "materials/ogden_hill.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

namespace
{
constexpr double table_digits = 2e-6; // six to seven printed digits

OgdenHill eva(double nu)
{
  return {1.05e6, 4, nu / (1 - 2 * nu)};
}
} // namespace

TEST_CASE("Uniaxial and confined compression follow the closed forms", "[ogden_hill]")
{
  struct Row
  {
    double strain, uniaxial_0, uniaxial_02, confined_02, energy_0, energy_02;
  };
  const Row rows[] = {{0.10, 200.608, 251.908, 288.591, 10.177, 12.575},
                      {0.25, 478.516, 659.664, 805.782, 61.311, 80.105},
                      {0.40, 761.600, 1203.301, 1615.645, 153.943, 217.035},
                      {0.50, 984.375, 1762.531, 2580.209, 240.855, 363.301}};
  for (const auto &row : rows)
  {
    CAPTURE(row.strain);
    const double l = 1 - row.strain, e = std::log(l);
    const auto   straight = eva(0).response(LogStrains<double>{e, 0, 0});
    const auto   free = eva(0.2).response(LogStrains<double>{e, -0.2 * e, -0.2 * e});
    const auto   confined = eva(0.2).response(LogStrains<double>{e, 0, 0});
    CHECK(-straight.stress[0] / l == Approx(1e3 * row.uniaxial_0).epsilon(table_digits));
    CHECK(-free.stress[0] / l == Approx(1e3 * row.uniaxial_02).epsilon(table_digits));
    CHECK(std::abs(free.stress[1]) < 1e-9 * 1.05e6); // free sides
    CHECK(-confined.stress[0] / l == Approx(1e3 * row.confined_02).epsilon(table_digits));
    CHECK(straight.energy == Approx(1e3 * row.energy_0).epsilon(5e-5)); // five printed digits
    CHECK(free.energy == Approx(1e3 * row.energy_02).epsilon(5e-5));
  }
}

TEST_CASE("Other exponents in uniaxial compression to half height", "[ogden_hill]")
{
  const double e = std::log(0.5);
  for (const auto &[alpha, expected] : {std::pair{2.0, 1500e3}, {8.0, 498.047e3}, {-2.0, 6000e3}})
    CHECK(-OgdenHill{1e6, alpha, 0}.response(LogStrains<double>{e, 0, 0}).stress[0] / 0.5 ==
          Approx(expected).epsilon(table_digits));
}

TEST_CASE("Simple shear follows the closed form", "[ogden_hill]")
{
  // tau = (tau_1 - tau_2) l1 l2/(l1^2 - l2^2) gamma for the principal stretches of simple shear (J = 1).
  const double gamma = 0.5, l1 = std::sqrt(1 + gamma * gamma / 2 + gamma * std::sqrt(1 + gamma * gamma / 4));
  for (const auto &[alpha, expected] : {std::pair{4.0, 590.625e3}, {2.0, 525.0e3}})
  {
    const auto r = OgdenHill{1.05e6, alpha, 0.3}.response(LogStrains<double>{std::log(l1), -std::log(l1), 0});
    const double shear = gamma * (r.stress[0] - r.stress[1]) / (l1 * l1 - 1 / (l1 * l1));
    CHECK(shear == Approx(expected).epsilon(table_digits));
  }
}

TEST_CASE("Hydrostatic compression follows the closed form", "[ogden_hill]")
{
  const double j = 0.7, e = std::log(j) / 3;
  CHECK(-eva(0).response(LogStrains<double>{e, e, e}).stress[0] / j ==
        Approx(283.850e3).epsilon(table_digits));
  CHECK(-eva(0.2).response(LogStrains<double>{e, e, e}).stress[0] / j ==
        Approx(740.545e3).epsilon(table_digits));
}

TEST_CASE("A vanishing volumetric exponent is reached without a jump", "[ogden_hill]")
{
  const LogStrains<double> e{-0.4, 0.05, 0.02};
  const auto               limit = OgdenHill{1e6, 8, 0}.response(e);
  // The limit itself: W = 2 mu/alpha^2 [sum l^alpha - 3 - alpha ln J].
  const double w = 2e6 / 64 * (std::exp(-3.2) + std::exp(0.4) + std::exp(0.16) - 3 - 8 * (-0.33));
  CHECK(limit.energy == Approx(w).epsilon(1e-13));
  for (const double beta : {1e-300, 1e-12, 1e-6})
  {
    CAPTURE(beta);
    const auto near = OgdenHill{1e6, 8, beta}.response(e);
    // The first order in beta is alpha^2 (ln J)^2/2 beta in the bracket: below 10 beta relative here.
    CHECK(near.energy == Approx(limit.energy).epsilon(10 * beta + 1e-14));
    CHECK(near.stress[0] == Approx(limit.stress[0]).epsilon(10 * beta + 1e-14));
    CHECK(near.moduli[3] == Approx(2e6 * beta * std::exp(8 * beta * 0.33)).epsilon(1e-13));
  }
}
