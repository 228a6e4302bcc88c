// SPDX-License-Identifier: Apache-2.0
// What every law in principal log strains owes, whatever its formula: stress is the derivative of the
// energy, moduli are the derivative of the stress, the order of the axes does not matter (with the spectral
// form this is objectivity), rest is stress-free with the stated small-strain moduli, lanes go through like
// single numbers.
#include "materials/cell_gas.h"
#include "materials/densification.h"
#include "materials/ogden_hill.h"
#include "materials/relaxing_branch.h"
#include "materials/slipping_branch.h"
#include "materials/yeoh.h"
#include "tests/support/catch.h"

#include "dual.h"
#include "lanes.h"

#include <vector>

using namespace solemech::materials;
using namespace solemech::tests;

namespace
{
// Derivatives come from differentiating numbers: only rounding is left, relative to the largest entry.
constexpr double rounding = 1e-12;

constexpr std::size_t column[3][3] = {{0, 3, 4}, {3, 1, 5}, {4, 5, 2}};

const std::vector<LogStrains<double>> states = {{0.013, -0.4, 0.11}, {-0.7, 0.02, 0.03},   {0.35, 0.2, -0.08},
                                                {-0.2, -0.2, -0.2},  {1e-4, -3e-4, 2e-4},  {0.3, 0.3, 0.3},
                                                {0.6, -0.3, -0.3},   {-0.05, 0.02, 0.0301}};

/// A branch seen as a law: the potential of one push.
struct PushOf
{
  Branch branch;
  double remaining;
  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    return branch.push(strains, remaining).response;
  }
};

template <typename Law>
void check_contract(const Law &law)
{
  static_assert(IsotropicLaw<Law, double> && IsotropicLaw<Law, Dual> && IsotropicLaw<Law, Lanes>);
  for (const auto &e : states)
  {
    CAPTURE(e[0], e[1], e[2]);
    const auto plain = law.response(e);
    const auto slopes = law.response(
      LogStrains<Dual>{Dual::variable(e[0], 0), Dual::variable(e[1], 1), Dual::variable(e[2], 2)});
    double stress_scale = 1e-30, moduli_scale = 1e-30;
    for (const double s : plain.stress)
      stress_scale = std::max(stress_scale, std::abs(s));
    for (const double m : plain.moduli)
      moduli_scale = std::max(moduli_scale, std::abs(m));
    // Cancelling parts of a small stress are of the order of the moduli times the strain.
    stress_scale = std::max(stress_scale, 1e-3 * moduli_scale);
    for (std::size_t a = 0; a < 3; ++a)
    {
      CHECK(std::abs(slopes.energy.d[a] - plain.stress[a]) <= rounding * stress_scale);
      for (std::size_t b = 0; b < 3; ++b)
        CHECK(std::abs(slopes.stress[a].d[b] - plain.moduli[column[a][b]]) <= rounding * moduli_scale);
    }

    const auto turned = law.response(LogStrains<double>{e[1], e[2], e[0]});
    CHECK(turned.energy == Approx(plain.energy).epsilon(1e-12).margin(1e-14 * moduli_scale));
    for (std::size_t a = 0; a < 3; ++a)
      CHECK(std::abs(turned.stress[a] - plain.stress[(a + 1) % 3]) <= rounding * stress_scale);
  }

  for (std::size_t first = 0; first < states.size(); first += 4)
  {
    LogStrains<Lanes> together;
    for (std::size_t i = 0; i < 4; ++i)
      for (std::size_t a = 0; a < 3; ++a)
        together[a].lane[i] = states[first + i][a];
    const auto lanes = law.response(together);
    for (std::size_t i = 0; i < 4; ++i)
    {
      const auto one = law.response(states[first + i]);
      CHECK(lanes.energy.lane[i] == one.energy);
      for (std::size_t a = 0; a < 3; ++a)
        CHECK(lanes.stress[a].lane[i] == one.stress[a]);
      for (std::size_t k = 0; k < 6; ++k)
        CHECK(lanes.moduli[k].lane[i] == one.moduli[k]);
    }
  }
}

/// At rest: no energy, no stress, moduli of isotropic linear elasticity.
template <typename Law>
void check_rest(const Law &law, double mu, double kappa)
{
  const auto   rest = law.response(LogStrains<double>{0, 0, 0});
  const double scale = mu + kappa;
  CHECK(rest.energy == 0);
  for (std::size_t a = 0; a < 3; ++a)
  {
    CHECK(rest.stress[a] == 0);
    CHECK(rest.moduli[a] == Approx(kappa + 4 * mu / 3).epsilon(1e-14).margin(1e-14 * scale));
    CHECK(rest.moduli[3 + a] == Approx(kappa - 2 * mu / 3).epsilon(1e-14).margin(1e-14 * scale));
  }
  // Small strains keep their digits: the energy of 1e-7 is the quadratic form to the size of the cubic term.
  const double t = 1e-7;
  const auto   small = law.response(LogStrains<double>{t, -2 * t, 3 * t});
  const double dev2 = t * t * (14.0 - 4.0 / 3.0);
  CHECK(small.energy == Approx(mu * dev2 + 0.5 * kappa * 4 * t * t).epsilon(2e-5));
}
} // namespace

TEST_CASE("Network terms keep the contract of a law", "[ogden_hill]")
{
  for (const double alpha : {-2.0, 2.0, 8.0, 17.5})
    for (const double beta : {0.0, 1e-12, 1e-6, 0.125, 2.0})
    {
      CAPTURE(alpha, beta);
      const OgdenHill law{0.6e6, alpha, beta};
      check_contract(law);
      // mu and kappa of the handbook form: kappa = 2 mu (1/3 + beta).
      check_rest(law, 0.6e6, 1.2e6 * (1.0 / 3.0 + beta));
    }
}

TEST_CASE("Cell gas keeps the contract of a law", "[cell_gas]")
{
  for (const double n : {1.0, 1.0 + 1e-9, 1.2, 1.4})
  {
    CAPTURE(n);
    const CellGas law{0.16, 0.8, 101325, n};
    check_contract(law);
    check_rest(law, 0, n * 0.8 * 101325 / 0.84);
  }
}

TEST_CASE("Densification keeps the contract of a law", "[densification]")
{
  check_contract(Densification{0.16, 30e3, 3});
  check_contract(Densification{0.1, 30e3, 1.5});
  const auto rest = Densification{0.16, 30e3, 3}.response(LogStrains<double>{0, 0, 0});
  CHECK(rest.energy == 0);
  CHECK(rest.stress[0] == 0);
  CHECK(rest.moduli[0] == 0);
}

TEST_CASE("The quadratic law keeps the contract of a law", "[hencky]")
{
  const Hencky law{0.9e6, 2.1e6};
  check_contract(law);
  check_rest(law, 0.9e6, 2.1e6);
}

TEST_CASE("Isochoric rubber keeps the contract of a law", "[yeoh]")
{
  for (const auto &law : {IsochoricRubber{0.5e6, -0.05e6, 0.01e6, 0}, IsochoricRubber{0.2e6, 0, 0, 0.05e6},
                          IsochoricRubber{0.3e6, 0.02e6, 0.003e6, 0.04e6}})
  {
    check_contract(law);
    check_rest(law, law.shear_modulus(), 0);
  }
}

TEST_CASE("Pushed branches derive from a potential", "[branch]")
{
  constexpr double never = std::numeric_limits<double>::infinity();
  check_contract(PushOf{RelaxingBranch(0.3e6, 0.4e6, 2e-3), 0.7});
  check_contract(PushOf{RelaxingBranch(0.3e6, 0, 2e-3), 0.7});
  check_contract(PushOf{SlippingBranch(0.3e6, 0.4e6, 0.05, never), 1}); // some states slip, some do not
  check_contract(PushOf{SlippingBranch(0.3e6, 0.4e6, 0.3, 5), 0.9});
  check_rest(PushOf{SlippingBranch(0.3e6, 0.4e6, 0.05, never), 1}, 0.3e6, 0.4e6);
}
