// SPDX-License-Identifier: Apache-2.0
// Isochoric rubber against exact points of the incompressible forms (textbook): uniaxial 2 (L - L^-2)(W1 +
// W2/L), pure shear 2 (L - L^-3)(W1 + W2), equibiaxial 2 (L - L^-5)(W1 + L^2 W2). The stated values are
// arithmetic of these formulas, done outside the project [MPa].
#include "materials/volumetric.h"
#include "materials/yeoh.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

namespace
{
constexpr double table_digits = 1.2e-5; // five printed digits

enum Mode { uniaxial, shear, biaxial };

/// Nominal stress of the law with the third principal stress brought to zero by a pressure.
double nominal(const IsochoricRubber &rubber, double stretch, Mode mode)
{
  const double l = std::log(stretch);
  const auto   e = mode == uniaxial ? LogStrains<double>{l, -l / 2, -l / 2}
                   : mode == shear  ? LogStrains<double>{l, 0, -l}
                                    : LogStrains<double>{l, l, -2 * l};
  const auto   r = rubber.response(e);
  return (r.stress[0] - r.stress[2]) / stretch;
}
} // namespace

TEST_CASE("Rubber laws pass through the exact points", "[yeoh]")
{
  const IsochoricRubber neo_hooke{0.5}, mooney{0.2, 0, 0, 0.05}, yeoh{0.5, -0.05, 0.01, 0};
  struct Point
  {
    const IsochoricRubber &rubber;
    double                 stretch;
    Mode                   mode;
    double                 stress;
  };
  const Point points[] = {
    {neo_hooke, 2, uniaxial, 1.75},      {neo_hooke, 2, shear, 1.875},      {neo_hooke, 2, biaxial, 1.96875},
    {neo_hooke, 0.8, uniaxial, -0.7625}, {mooney, 1.5, uniaxial, 0.49259},  {mooney, 1.5, shear, 0.60185},
    {mooney, 1.5, biaxial, 0.85520},     {mooney, 0.7, uniaxial, -0.72787}, {mooney, 0.7, shear, -1.10773},
    {mooney, 0.7, biaxial, -2.35721},    {yeoh, 1.5, uniaxial, 0.95396},    {yeoh, 1.5, biaxial, 1.14034},
    {yeoh, 2, uniaxial, 1.47000},        {yeoh, 0.7, uniaxial, -1.25742}};
  for (const auto &p : points)
  {
    CAPTURE(p.stretch, p.mode);
    CHECK(nominal(p.rubber, p.stretch, p.mode) == Approx(p.stress).epsilon(table_digits));
    const double second = p.mode == uniaxial ? -0.5 : p.mode == shear ? 0.0 : 1.0;
    CHECK(p.rubber.nominal_stress(p.stretch, second) == Approx(p.stress).epsilon(table_digits));
  }
}

TEST_CASE("A published Yeoh fit stays near measured rubber", "[yeoh]")
{
  // L.R.G. Treloar, Trans. Faraday Soc. 40 (1944), natural rubber, uniaxial points up to stretch 3;
  // coefficients are the least squares fit of exactly these points, whose scatter about the fit is 0.0153
  // MPa.
  const IsochoricRubber           fit{0.184071, -8.53897e-3, 5.73694e-4, 0};
  const std::pair<double, double> data[] = {{1.01, 0.03}, {1.12, 0.14}, {1.24, 0.23},
                                            {1.39, 0.32}, {1.61, 0.41}, {1.89, 0.50},
                                            {2.17, 0.58}, {2.42, 0.67}, {3.01, 0.85}};
  double                          sum = 0;
  for (const auto &[stretch, stress] : data)
    sum += std::pow(nominal(fit, stretch, uniaxial) - stress, 2);
  CHECK(std::sqrt(sum / 9) == Approx(0.0153).margin(0.00006));
}

TEST_CASE("A change of volume leaves the isochoric part alone", "[yeoh]")
{
  const IsochoricRubber    rubber{0.3e6, 0.02e6, 0.003e6, 0.04e6};
  const LogStrains<double> e{0.4, -0.1, -0.25}, swollen{0.6, 0.1, -0.05};
  const auto               a = rubber.response(e), b = rubber.response(swollen);
  CHECK(b.energy == Approx(a.energy).epsilon(1e-13));
  CHECK(b.stress[0] == Approx(a.stress[0]).epsilon(1e-13));
  CHECK(std::abs(a.stress[0] + a.stress[1] + a.stress[2]) < 1e-9 * std::abs(a.stress[0]));
}

TEST_CASE("Rubbers that soften are refused", "[yeoh]")
{
  CHECK(monotone({0.5e6, -0.05e6, 0.01e6, 0}));
  CHECK_FALSE(monotone({0.5e6, -0.2e6, 0, 0}));
  CHECK_THROWS_AS(check(IsochoricRubber{0.5e6, -0.2e6, 0, 0}), InvalidParameter);
  CHECK_THROWS_AS(check(IsochoricRubber{0.2e6, 0, 0, -0.3e6}), InvalidParameter);
}

TEST_CASE("The volume part and its two derivatives", "[volumetric]")
{
  const Volumetric u{100e6};
  // By hand at J = 2: kappa/4 (3 - 2 ln 2), kappa/2 (3/2), kappa/2 (5/4).
  CHECK(u.energy(2.0) == Approx(25e6 * (3 - 2 * std::log(2.0))).epsilon(1e-14));
  CHECK(u.pressure(2.0) == Approx(75e6).epsilon(1e-14));
  CHECK(u.modulus(2.0) == Approx(62.5e6).epsilon(1e-14));
  // Near J = 1 it is kappa (J - 1)^2/2 less kappa (J - 1)^3/6, also at 1e-6.
  const double d = 1e-6;
  CHECK(u.energy(1 + d) == Approx(0.5 * 100e6 * d * d * (1 - d / 3)).epsilon(1e-9));
  CHECK(u.pressure(1 + d) == Approx(100e6 * d * (1 - d / 2)).epsilon(1e-9));
}
