// SPDX-License-Identifier: Apache-2.0
// Rubber fits on the table of L.R.G. Treloar, Trans. Faraday Soc. 40 (1944) 59, doi:10.1039/tf9444000059, as
// digitised in open tables of the data; coefficients worked outside the project from the same points
// (unweighted least squares).
#include "tests/support/catch.h"
#include "tools/study/rubber_fit.h"

#include <stdexcept>
#include <utility>

using namespace solemech::settle;

namespace
{
using Table = std::vector<std::pair<double, double>>; // stretch, nominal stress [MPa]

const Table uniaxial{{1.01, 0.03}, {1.12, 0.14}, {1.24, 0.23}, {1.39, 0.32}, {1.61, 0.41}, {1.89, 0.50},
                     {2.17, 0.58}, {2.42, 0.67}, {3.01, 0.85}, {3.58, 1.04}, {4.03, 1.21}, {4.76, 1.58},
                     {5.36, 1.94}, {5.76, 2.29}, {6.16, 2.67}, {6.40, 3.02}, {6.62, 3.39}, {6.87, 3.75},
                     {7.05, 4.12}, {7.16, 4.47}, {7.27, 4.85}, {7.43, 5.21}, {7.50, 5.57}, {7.61, 6.30}};
const Table shear{{1.06, 0.07}, {1.14, 0.16}, {1.21, 0.24}, {1.32, 0.33}, {1.46, 0.42},
                  {1.87, 0.59}, {2.40, 0.76}, {2.98, 0.93}, {3.48, 1.11}, {3.96, 1.28},
                  {4.36, 1.46}, {4.69, 1.62}, {4.96, 1.79}};
const Table biaxial{{1.04, 0.09}, {1.08, 0.16}, {1.12, 0.24}, {1.14, 0.26}, {1.20, 0.33}, {1.31, 0.44},
                    {1.42, 0.51}, {1.69, 0.65}, {1.94, 0.77}, {2.49, 0.96}, {3.03, 1.24}, {3.43, 1.45},
                    {3.75, 1.72}, {4.03, 1.96}, {4.26, 2.22}, {4.44, 2.43}};

void add(std::vector<StretchPoint> &points, const Table &table, Pull pull, double limit)
{
  for (const auto &[stretch, stress] : table)
    if (stretch <= limit)
      points.push_back({pull, stretch, stress * 1e6});
}

std::vector<StretchPoint> all_modes(double limit)
{
  std::vector<StretchPoint> points;
  add(points, uniaxial, Pull::uniaxial, limit);
  add(points, shear, Pull::pure_shear, limit);
  add(points, biaxial, Pull::equibiaxial, limit);
  return points;
}

std::vector<StretchPoint> pull_only(double limit)
{
  std::vector<StretchPoint> points;
  add(points, uniaxial, Pull::uniaxial, limit);
  return points;
}

bool warns(const RubberFit &fit, const char *words)
{
  for (const auto &warning : fit.warnings)
    if (warning.find(words) != std::string::npos)
      return true;
  return false;
}
} // namespace

TEST_CASE("Yeoh's cubic on the published table has the coefficients worked outside")
{
  // Stated to six digits; the sources of the digits are the two decimals of the table.
  const auto near = [](double megapascal) { return Approx(megapascal * 1e6).epsilon(1e-4); };
  const auto all = fit_rubber(all_modes(10), RubberForm::yeoh);
  CHECK(all.rubber.c10 == near(0.183027));
  CHECK(all.rubber.c20 == near(-1.41845e-3));
  CHECK(all.rubber.c30 == near(3.93471e-5));
  CHECK(all.misfit == Approx(0.145e6).epsilon(0.005));
  CHECK_FALSE(warns(all, "one kind of test"));

  const auto small = fit_rubber(all_modes(2), RubberForm::yeoh);
  CHECK(small.rubber.c10 == near(0.195734));
  CHECK(small.rubber.c20 == near(-8.3089e-3));
  CHECK(small.rubber.c30 == near(1.35579e-3));
  CHECK(small.misfit == Approx(0.0324e6).epsilon(0.005));

  const auto pull = fit_rubber(pull_only(3.1), RubberForm::yeoh);
  CHECK(pull.rubber.c10 == near(0.184071));
  CHECK(pull.rubber.c20 == near(-8.53897e-3));
  CHECK(pull.rubber.c30 == near(5.73694e-4));
  CHECK(warns(pull, "one kind of test"));
  CHECK(fit_rubber(all_modes(2), RubberForm::neo_hooke).rubber.c10 == near(0.187715));
}

TEST_CASE("a Mooney fit on pull tests alone misleads, and says so")
{
  const auto pull = fit_rubber(pull_only(3.1), RubberForm::mooney);
  const auto all = fit_rubber(all_modes(2), RubberForm::mooney);
  CHECK(pull.rubber.c01 == Approx(0.0845202e6).epsilon(1e-4));
  CHECK(all.rubber.c01 == Approx(0.0110699e6).epsilon(1e-4));
  CHECK(pull.rubber.c01 > 7 * all.rubber.c01);
  CHECK(warns(pull, "many times too large"));
  CHECK_FALSE(warns(all, "many times too large"));
  // Over the whole pull range it has not even a stiffness at rest.
  const auto whole = fit_rubber(pull_only(10), RubberForm::mooney);
  CHECK(whole.rubber.shear_modulus() < 0);
  CHECK(warns(whole, "without stiffness at rest"));
}

TEST_CASE("an exact law is found again, and points that cannot be are refused")
{
  solemech::materials::IsochoricRubber truth;
  truth.c10 = 0.5e6, truth.c20 = -0.05e6, truth.c30 = 0.01e6;
  std::vector<StretchPoint> points;
  for (const double stretch : {0.7, 0.9, 1.3, 1.8})
    points.push_back({Pull::uniaxial, stretch, truth.nominal_stress(stretch, -0.5)});
  CHECK(fit_rubber(points, RubberForm::yeoh).rubber.c30 == Approx(0.01e6).epsilon(1e-9));
  CHECK_THROWS_AS(fit_rubber({{Pull::uniaxial, -1, 1e5}}, RubberForm::neo_hooke), std::invalid_argument);
  CHECK_THROWS_AS(fit_rubber({{Pull::uniaxial, 1.5, 1e5}, {Pull::uniaxial, 1, 0}}, RubberForm::yeoh),
                  std::invalid_argument);
}
