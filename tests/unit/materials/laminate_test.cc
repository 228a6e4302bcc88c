// SPDX-License-Identifier: Apache-2.0
// Laminates against classical laminate theory: worked values of five lay-ups, the three sets of moduli that
// stand for all plies of one layer of elements, and what they cannot stand for.
#include "materials/laminate.h"
#include "tests/support/catch.h"

#include <numbers>

using namespace solemech::materials;

namespace
{
constexpr double MPa = 1e6, mm = 1e-3;

constexpr Ply carbon{120e3 * MPa, 8e3 * MPa, 4.5e3 * MPa, 0.3, mm, 0};

/// Of equal plies, 1 mm in all; angles in degrees from the top.
Plies plies(const std::vector<double> &angles)
{
  Plies out;
  for (const double angle : angles)
  {
    out.push_back(carbon);
    out.back().thickness = mm / angles.size(), out.back().angle = angle * std::numbers::pi / 180;
  }
  return out;
}
} // namespace

TEST_CASE("bending stiffnesses of laminates")
{
  struct Case
  {
    const char         *name;
    std::vector<double> angles;
    double              d11, d12, d22, d66, d16, narrow; ///< [N mm]
  };
  // Classical laminate theory (R.M. Jones, Mechanics of Composite Materials, ch. 4), worked out apart from
  // this program and given to five digits.
  const std::vector<Case> cases{
    {"[0]4", {0, 0, 0, 0}, 10060.4, 201.2, 670.7, 375, 0, 10000},
    {"[0/90]s", {0, 90, 90, 0}, 8886.7, 201.2, 1844.4, 375, 0, 8864.7},
    {"[90/0]s", {90, 0, 0, 90}, 1844.4, 201.2, 8886.7, 375, 0, 1839.8},
    {"[0/45/-45/90]s", {0, 45, -45, 90, 90, -45, 45, 0}, 7109.7, 1097.9, 1828.0, 1271.7, 440.1, 6423.8},
    {"[45/-45]s", {45, -45, -45, 45}, 3158.4, 2408.4, 3158.4, 2582.2, 1760.6, 1212.7}};
  for (const auto &one : cases)
  {
    INFO(one.name);
    constexpr double digits = 5e-5, unit = 1e-3;
    const auto       laminate = laminate_stiffness(plies(one.angles));
    const auto &[d11, d22, d66, d12, d16, d26] = laminate.bending;
    const double margin = 0.1 * unit; // of a small entry, to the digit given
    CHECK(d11 == Approx(one.d11 * unit).epsilon(digits));
    CHECK(d12 == Approx(one.d12 * unit).epsilon(digits).margin(margin));
    CHECK(d22 == Approx(one.d22 * unit).epsilon(digits));
    CHECK(d66 == Approx(one.d66 * unit).epsilon(digits).margin(margin));
    CHECK(d16 == Approx(one.d16 * unit).epsilon(digits).margin(margin));
    CHECK(narrow_strip_stiffness(laminate) == Approx(one.narrow * unit).epsilon(digits));
    for (const double b : laminate.coupling) // symmetric lay-ups
      CHECK(b == Approx(0).margin(1e-9 * d11 / mm));
    make_laminate(plies(one.angles));
  }
}

TEST_CASE("three sets of moduli have the moments of all plies")
{
  // Gauss points and weights of the thickness from -1 to 1.
  const double   points[] = {-std::sqrt(0.6), 0, std::sqrt(0.6)}, weights[] = {5. / 9, 8. / 9, 5. / 9};
  const auto     all = plies({0, 30, 90, -60, 0, 45});
  const auto     whole = laminate_stiffness(all);
  const auto     sets = make_laminate(all);
  const unsigned place[] = {entry_of(0, 0), entry_of(1, 1), entry_of(3, 3),
                            entry_of(0, 1), entry_of(0, 3), entry_of(1, 3)};
  const double   half = 0.5 * mm;
  for (std::size_t i = 0; i < 6; ++i)
  {
    double moments[3] = {};
    for (unsigned q = 0; q < 3; ++q)
      for (unsigned power = 0; power < 3; ++power)
        moments[power] += half * weights[q] * std::pow(half * points[q], power) * sets.at(q)[place[i]];
    const double scale = whole.stretch[0];
    CHECK(moments[0] == Approx(whole.stretch[i]).margin(1e-12 * scale));
    CHECK(moments[1] == Approx(whole.coupling[i]).margin(1e-12 * scale * mm));
    CHECK(moments[2] == Approx(whole.bending[i]).margin(1e-12 * scale * mm * mm));
  }
}

TEST_CASE("a plate of one ply at no angle has its own moduli throughout")
{
  const auto   sets = make_laminate(plies({0}));
  const double share = 1 - 0.09 * 8 / 120;
  for (unsigned q = 0; q < 3; ++q)
  {
    CHECK(sets.at(q)[entry_of(0, 0)] == Approx(120e9 / share).epsilon(1e-12));
    CHECK(sets.at(q)[entry_of(0, 1)] == Approx(0.3 * 8e9 / share).epsilon(1e-12));
    CHECK(sets.at(q)[entry_of(2, 2)] == Approx(8e9).epsilon(1e-12));
    CHECK(sets.at(q)[entry_of(5, 5)] == Approx(4.5e9).epsilon(1e-12));
  }
}

TEST_CASE("a plate bent as a whole is one ply; stiff plies on top stretch when it is bent up")
{
  const auto whole = laminate_stiffness({as_ply({30e9, 20e9, 5e9, 0.2}, 2 * mm)});
  CHECK(whole.bending[0] == Approx(30e9 / (1 - 0.04 * 2 / 3) * std::pow(2 * mm, 3) / 12).epsilon(1e-12));
  CHECK(laminate_stiffness(plies({0, 90})).coupling[0] > 0); // z counts upwards
}

TEST_CASE("laminates that one layer of elements cannot stand for, and plies that are none")
{
  Plies sandwich = plies({0, 90, 90, 90, 90, 90, 90, 0});
  for (auto &ply : sandwich)
    if (ply.angle > 1)
      ply.modulus_along = ply.modulus_across = 0.1e9, ply.shear_modulus = 0.04e9;
  CHECK_THROWS_AS(make_laminate(sandwich), InvalidParameter);
  CHECK_THROWS_AS(make_laminate({}), InvalidParameter);
  Plies bad = plies({0});
  bad[0].poisson_ratio = 4;
  CHECK_THROWS_AS(make_laminate(bad), InvalidParameter);
  bad = plies({0});
  bad[0].thickness = 0;
  CHECK_THROWS_AS(make_laminate(bad), InvalidParameter);
}
