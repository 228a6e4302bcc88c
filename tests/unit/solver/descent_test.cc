// SPDX-License-Identifier: Apache-2.0
// Two bars hinged to a flat arch (von Mises 1923, from memory): pressed beyond its limit load, the arch has
// no state of rest near by and falls through to the far side. Force and limit load in closed form.
#include "solver/time/descent.h"
#include "tests/support/catch.h"

#include <cmath>

using namespace solemech::solver;

namespace
{
constexpr double span = 1, rise = 0.2, stiffness = 1000; // half span [m], height [m], of a bar [N/m]
constexpr double accurate = 1e-6;                        // of the load, in the residual asked for

double bar(double sink)
{
  return std::hypot(span, rise - sink);
}

/// Downward force that holds the crown at a sink [N], and its slope.
double force(double sink)
{
  return 2 * stiffness * (rise - sink) * (bar(0) / bar(sink) - 1);
}
double slope(double sink)
{
  const double length = bar(sink);
  return 2 * stiffness * (1 - bar(0) * span * span / (length * length * length));
}

/// One unknown.
class OneByOne : public LinearSolver
{
public:
  bool factorise(const Tangent &tangent) override
  {
    value_ = tangent.values[0];
    return value_ != 0;
  }
  Vector solve(const Vector &right_side) const override { return right_side / value_; }
  bool   indefinite() const override { return value_ < 0; }

private:
  double value_ = 0;
};

Residual pressed_by(double load)
{
  return [load](const Vector &x, Vector &residual, Tangent *tangent, std::string &) {
    residual = Vector::Constant(1, force(x[0]) - load);
    if (tangent)
    {
      tangent->reset(1, 1, 0);
      tangent->values[0] = slope(x[0]);
    }
    return true;
  };
}

const Stiffen stiffen = [](double share, Tangent &tangent) { tangent.values[0] += share * 2 * stiffness; };

/// Greatest force before the arch falls through.
double limit_load()
{
  // Where the slope vanishes: bar(sink)^3 = bar(0) span^2.
  const double length = std::cbrt(bar(0) * span * span);
  return force(rise - std::sqrt(length * length - span * span));
}
} // namespace

TEST_CASE("below its limit load a flat arch is found where Newton's method finds it", "[descent]")
{
  OneByOne   solver;
  const auto load = 0.9 * limit_load();
  Vector     x = Vector::Zero(1), same = Vector::Zero(1);
  REQUIRE(descend(pressed_by(load), stiffen, solver, x, load, {.tolerance = accurate}).converged);
  REQUIRE(newton(pressed_by(load), solver, same, load, {.tolerance = accurate}).converged);
  CHECK(x[0] == Approx(same[0]).epsilon(1e-4));
  CHECK(x[0] < rise);
}

TEST_CASE("beyond its limit load a flat arch falls through to the far side", "[descent]")
{
  OneByOne   solver;
  const auto load = 1.05 * limit_load();
  Vector     x = Vector::Zero(1);
  const auto found = descend(pressed_by(load), stiffen, solver, x, load, {.tolerance = accurate});
  REQUIRE(found.converged);
  CHECK(x[0] > 2 * rise); // beyond the mirrored shape, where the force is zero
  CHECK(force(x[0]) == Approx(load).epsilon(2 * accurate));
  CHECK(slope(x[0]) > 0);
}

TEST_CASE("a shape that cannot be is said so at once", "[descent]")
{
  OneByOne       solver;
  Vector         x = Vector::Zero(1);
  const Residual never = [](const Vector &, Vector &, Tangent *, std::string &failed) {
    failed = "foam";
    return false;
  };
  const auto found = descend(never, stiffen, solver, x, 1, {});
  CHECK_FALSE(found.converged);
  CHECK(found.reason.find("foam") != std::string::npos);
}
