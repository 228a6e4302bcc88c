// SPDX-License-Identifier: Apache-2.0
// A whole sole: volumes against area times thickness, plates with slots, what fills what, and every flaw of
// its measurements.
#include "geometry/errors.h"
#include "geometry/sole/sole_body.h"
#include "geometry/sole/sole_flaws.h"
#include "tests/support/catch.h"

#include "sample_sole.h"

#include <cmath>
#include <limits>
#include <numeric>

using namespace solemech::geometry;
using solemech::tests::sample_sole;

namespace
{
/// The only flaw of a sole.
Flaw only_flaw(const SoleShape &shape)
{
  const auto list = flaws(shape);
  for (const auto &flaw : list)
    INFO(flaw.entry << ": " << flaw.reason);
  REQUIRE(list.size() == 1);
  CHECK_THROWS_AS(SoleBody(shape), InvalidGeometry);
  return list.front();
}
} // namespace

TEST_CASE("a layer of constant thickness has the volume area times thickness, and the rest fills its host")
{
  const SoleBody body(sample_sole());
  const double   area = body.outline().area();
  const auto     volumes = body.volumes();
  CHECK(volumes[2] == Approx(area * 0.003).epsilon(1e-5));
  CHECK(volumes[1] == Approx(body.region(1).area() * 0.0012).epsilon(1e-9));
  // Steiner: a line drawn in by d encloses A - U d + pi d^2.
  double    round = 0;
  const int n = 20000;
  for (int i = 0; i < n; ++i)
  {
    const auto along = body.outline().along(2 * M_PI * i / n);
    round += std::hypot(along[0], along[1]) * 2 * M_PI / n;
  }
  CHECK(body.region(1).area() == Approx(area - round * 0.006 + M_PI * 0.006 * 0.006).epsilon(1e-4));
  const PlanRegion whole(body.outline(), nullptr, 0, body.length());
  CHECK(std::accumulate(volumes.begin(), volumes.end(), 0.0) ==
        Approx(whole.integral([&](double x) { return body.height(x); })).epsilon(1e-9));
  CHECK(body.host(1) == 0);
  CHECK(body.filled_by(1, {0.1, 0}) == 1);
  CHECK(body.filled_by(1, {0.1, body.outline().across(0.1).high - 0.002}) == 0);
}

TEST_CASE("faces lie on each other, and stations read what was measured")
{
  const SoleBody body(sample_sole());
  const double   ball = body.ball_line().centre();
  CHECK(ball > usual_ball_lateral * 0.29);
  CHECK(ball < usual_ball_medial * 0.29);
  CHECK(body.lower_face(2, 0.1) == 0);
  for (std::size_t i = 0; i + 1 < body.n_layers(); ++i)
    CHECK(body.lower_face(i, 0.13) == Approx(body.upper_face(i + 1, 0.13)).epsilon(1e-14));
  CHECK(body.thickness(0, heel_station * 0.29) == Approx(0.022).epsilon(1e-12));
  CHECK(body.thickness(0, ball) == Approx(0.012).epsilon(1e-12));
  CHECK(body.height(0.29) == Approx(0.0122).epsilon(1e-12));
}

TEST_CASE("slots make forks and horseshoes: two tines beside a slot, whole beyond it")
{
  auto shape = sample_sole();
  shape.layers[1].from = 0.08;
  shape.layers[1].to = 0.26;
  const double whole = SoleBody(shape).region(1).area();
  shape.layers[1].slots = {{0.18, 0.30, {0, 0}, {0.02, 0.03}}};
  const SoleBody body(shape);
  CHECK(body.region(1).pieces(0.1).size() == 1);
  CHECK(body.region(1).pieces(0.22).size() == 2);
  CHECK(body.region(1).pieces(0.27).empty());
  CHECK_FALSE(body.region(1).covers({0.22, 0}));
  // Width of the slot at its open end, x = 0.26: 0.02 + 0.01 (0.08/0.12).
  CHECK(whole - body.region(1).area() == Approx(0.08 * (0.02 + 0.01 / 3)).epsilon(1e-4));
}

TEST_CASE("pockets, pods and grooves take away what they hold")
{
  auto       shape = sample_sole();
  const auto before = SoleBody(shape).volumes();
  shape.pockets = {{0, {PlanFigure::Form::ellipse, 0.05, 0, 0.05, 0.04, 0, 0}, 0.004, 0.003}};
  shape.patches = {{PatchShape::Kind::groove, {PlanFigure::Form::box, 0.2, 0, 0.04, 0.03, 0, 0}, 0.002, 1}};
  const SoleBody body(shape);
  const auto     after = body.volumes();
  const double   height = body.thickness(0, 0.05) - 0.007;
  CHECK(before[0] - after[0] == Approx(M_PI / 4 * 0.05 * 0.04 * height).epsilon(1e-9));
  CHECK(before[2] - after[2] == Approx(0.04 * 0.03 * 0.002).epsilon(0.02)); // on a grid of 0.7 mm
  CHECK(body.missing_tread({0.2, 0}) == 0.002);
  CHECK(body.missing_tread({0.1, 0}) == 0);
  shape.patches[0].kind = PatchShape::Kind::pod;
  shape.patches[0].coverage = 0.75;
  const SoleBody on_pods(shape);
  CHECK(on_pods.missing_tread({0.2, 0}) == Approx(0.0005).epsilon(1e-12));
  CHECK(on_pods.missing_tread({0.1, 0}) == 0.002);
}

TEST_CASE("flaws of outline, layers and slots are found, with the measurement they are about")
{
  auto shape = sample_sole();
  CHECK(flaws(shape).empty());
  SECTION("ball line off the sole")
  {
    shape.outline.ball_medial = 0.95 * 0.29;
    CHECK(only_flaw(shape).entry == "ball_medial");
  }
  SECTION("an outline that crosses itself")
  {
    shape.outline.half_widths.medial = {0.1, 0.002, 0.1, 0.002, 0.1, 0.002, 0.1};
    shape.outline.half_widths.lateral = {0.002, 0.002, 0.002, 0.002, 0.002, 0.002, 0.002};
    const auto list = flaws(shape);
    REQUIRE_FALSE(list.empty());
    CHECK(list.front().reason.find("crosses itself") != std::string::npos);
  }
  SECTION("thin and negative layers")
  {
    shape.layers[1].thickness.fill(0.1e-3);
    CHECK(only_flaw(shape).entry == "thickness");
    shape.layers[1].thickness = {0.0012, 0.0012, -0.001, 0.0012, 0.0012};
    CHECK(only_flaw(shape).entry == "thickness");
  }
  SECTION("a plate wider than the sole")
  {
    shape.layers[1].own = shape.outline.half_widths;
    shape.layers[1].own->lateral[3] += 0.005;
    CHECK(only_flaw(shape).entry == "lateral");
  }
  SECTION("slots that cut a plate through, and too many")
  {
    shape.layers[1].slots = {{0.1, 0.2, {0, 0}, {0.12, 0.12}}};
    CHECK(only_flaw(shape).of == Flaw::Of::slot);
    const SlotShape small{0.1, 0.2, {0, 0}, {0.01, 0.01}};
    shape.layers[1].slots = {small, small, small};
    CHECK(only_flaw(shape).slot == 2);
  }
}

TEST_CASE("flaws of pockets, tread and bottom line are found, and what is not a number is passed over")
{
  auto shape = sample_sole();
  SECTION("a pocket out of its layer, without room, on another")
  {
    const PlanFigure plan{PlanFigure::Form::ellipse, 0.05, 0, 0.05, 0.04, 0, 0};
    shape.pockets = {{1, plan, 0.0005, 0.0005}};
    CHECK(only_flaw(shape).entry == "floor");
    shape.pockets = {{0, plan, 0.004, 0.003}, {0, plan, 0.004, 0.003}};
    CHECK(only_flaw(shape).index == 1);
    shape.pockets = {{0, plan, 0.004, 0.003}};
    shape.pockets[0].plan.y = 0.03;
    CHECK(only_flaw(shape).entry == "x");
  }
  SECTION("pods beside the sole or deeper than the outsole")
  {
    shape.patches = {{PatchShape::Kind::pod, {PlanFigure::Form::box, 0.2, 0.2, 0.04, 0.03, 0, 0}, 0.002, 1}};
    CHECK(only_flaw(shape).entry == "x");
    shape.patches[0].plan.y = 0;
    shape.patches[0].depth = 0.004;
    CHECK(only_flaw(shape).entry == "depth");
  }
  SECTION("bottom lines that cannot be")
  {
    shape.bottom.rocker_radius = 5;
    CHECK(only_flaw(shape).entry == "rocker_radius");
    shape.bottom = {0.03, 0.004, 0.1, 0.012, 0};
    CHECK(only_flaw(shape).entry == "toe_spring_start");
    shape.bottom = {0.03, 0.02, 0.193, 0.012, 0};
    CHECK(only_flaw(shape).entry == "heel_bevel_rise");
  }
  SECTION("what is not a number is passed over")
  {
    shape.layers[0].thickness[2] = std::numeric_limits<double>::quiet_NaN();
    CHECK(flaws(shape).empty());
    shape.outline.length = std::numeric_limits<double>::quiet_NaN();
    CHECK(flaws(shape).empty());
  }
}
