// SPDX-License-Identifier: Apache-2.0
// Outlines, thickness curves, bottom lines and figures of a sole against plane geometry: areas of ellipse and
// rounded box, arcs that touch a line, mirror images. All are textbook formulas.
#include "geometry/errors.h"
#include "geometry/sole/bottom_line.h"
#include "geometry/sole/monotone_curve.h"
#include "geometry/sole/plan_figure.h"
#include "geometry/sole/trace.h"
#include "tests/support/catch.h"

#include "sample_sole.h"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace solemech::geometry;

namespace
{
constexpr double pi = std::numbers::pi;

HalfWidths ellipse(double half_width)
{
  HalfWidths widths;
  for (std::size_t i = 0; i < outline_stations.size(); ++i)
    widths.medial[i] = widths.lateral[i] =
      2 * half_width * std::sqrt(outline_stations[i] * (1 - outline_stations[i]));
  return widths;
}
} // namespace

TEST_CASE("the periodic cubic of a sine is the sine to fourth order, and joins up over the end of the period")
{
  const auto error = [](int n) {
    std::vector<double> knots, values;
    for (int i = 0; i < n; ++i)
    {
      knots.push_back(2 * pi * (i + 0.2 * std::sin(2 * pi * i / n)) / n);
      values.push_back(std::sin(knots.back()));
    }
    const PeriodicCubic curve(knots, values, 2 * pi);
    CHECK(curve.value(knots[3]) == Approx(values[3]).epsilon(1e-12));
    CHECK(curve.value(-0.1) == Approx(curve.value(2 * pi - 0.1)).epsilon(1e-12));
    CHECK(curve.slope(1e-9) == Approx(curve.slope(-1e-9)).epsilon(1e-6));
    CHECK(curve.slope(1) == Approx((curve.value(1 + 1e-6) - curve.value(1 - 1e-6)) / 2e-6).epsilon(1e-8));
    double worst = 0;
    for (double t = 0; t < 2 * pi; t += 0.01)
      worst = std::max(worst, std::abs(curve.value(t) - std::sin(t)));
    return worst;
  };
  CHECK(error(16) / error(32) > 12); // 16 for infinitely many
}

TEST_CASE("half widths of an ellipse give the area and the width of an ellipse, and round ends")
{
  const double  length = 0.290, half = 0.045;
  const Outline outline(length, ellipse(half));
  CHECK(outline.area() == Approx(pi / 4 * length * 2 * half).epsilon(1e-3));
  CHECK(outline.across(length / 2).width() == Approx(2 * half).epsilon(1e-12)); // a station
  CHECK(outline.across(0.3 * length).width() == Approx(4 * half * std::sqrt(0.21)).epsilon(1e-3));
  CHECK(outline.across(-1e-3).width() == 0);
  CHECK(outline.across(length).width() == 0);
  CHECK(outline.crossing() < 0);
  // Round: the curve is upright where it begins.
  CHECK(std::abs(outline.along(0)[0]) < 1e-12);
  CHECK(outline.along(0)[1] > 0);
}

TEST_CASE("a sole and its mirror image have the same area, edges exchanged")
{
  const auto shape = solemech::tests::sample_sole().outline;
  HalfWidths other = shape.half_widths;
  std::swap(other.medial, other.lateral);
  const Outline left(shape.length, shape.half_widths), right(shape.length, other);
  CHECK(left.area() == Approx(right.area()).epsilon(1e-12));
  for (const double x : {0.01, 0.1, 0.2, 0.28})
  {
    CHECK(left.across(x).low == Approx(-right.across(x).high).epsilon(1e-12));
    CHECK(left.across(x).high == Approx(-right.across(x).low).epsilon(1e-12));
  }
  for (std::size_t i = 0; i < outline_stations.size(); ++i)
    CHECK(left.across(outline_stations[i] * shape.length).high ==
          Approx(shape.half_widths.lateral[i]).epsilon(1e-12));
}

TEST_CASE("a trace of an ellipse that lies askew is laid straight: length, area and width of the ellipse")
{
  const double           length = 0.300, half = 0.050, turned = 0.15;
  std::vector<PlanPoint> points;
  for (int i = 0; i < 80; ++i)
  {
    const double x = length / 2 * std::cos(2 * pi * i / 80), y = half * std::sin(2 * pi * i / 80);
    points.push_back(
      {0.4 + std::cos(turned) * x - std::sin(turned) * y, 0.1 + std::sin(turned) * x + std::cos(turned) * y});
  }
  REQUIRE_FALSE(trace_flaw(points));
  const Outline outline = traced_outline(points, 0);
  CHECK(outline.length() == Approx(length).epsilon(1e-3));
  CHECK(outline.area() == Approx(pi / 4 * length * 2 * half).epsilon(2e-3));
  CHECK(outline.across(length / 2).width() == Approx(2 * half).epsilon(2e-3));
  CHECK(traced_outline(points, 2 * length).area() == Approx(4 * outline.area()).epsilon(1e-2));
  std::ranges::reverse(points); // drawn the other way round it is the same sole
  CHECK(traced_outline(points, 0).across(0.1).high == Approx(outline.across(0.1).high).epsilon(1e-9));
}

TEST_CASE("a trace that crosses itself, has few points or one side only is refused")
{
  std::vector<PlanPoint> points;
  for (int i = 0; i < 60; ++i)
    points.push_back({0.15 * std::cos(2 * pi * i / 60), 0.05 * std::sin(2 * pi * i / 60)});
  auto crossed = points;
  std::swap(crossed[10], crossed[14]);
  CHECK(trace_flaw(crossed).value().reason.find("crosses itself") != std::string::npos);
  CHECK(trace_flaw({points.begin(), points.begin() + 10}).value().reason.find("10 different points") !=
        std::string::npos);
  CHECK(trace_flaw({points.begin(), points.begin() + 31}));
  CHECK_THROWS_AS(traced_outline(crossed, 0), InvalidGeometry);
}

TEST_CASE("thickness between stations never leaves the range of its neighbours")
{
  const std::array<double, 5> at{0, 0.05, 0.1, 0.2, 0.29}, thickness{0.02, 0.03, 0.012, 0.012, 0.008};
  const MonotoneCurve         curve(at, thickness);
  for (std::size_t k = 0; k + 1 < at.size(); ++k)
    for (int i = 0; i <= 100; ++i)
    {
      const double value = curve(at[k] + (at[k + 1] - at[k]) * i / 100);
      CHECK(value >= std::min(thickness[k], thickness[k + 1]) - 1e-15);
      CHECK(value <= std::max(thickness[k], thickness[k + 1]) + 1e-15);
    }
  CHECK(curve(-1) == thickness.front());
  CHECK(curve(1) == thickness.back());
}

TEST_CASE("a toe spring is an arc that touches the floor and ends at its rise; a rocker goes on straight")
{
  const double     length = 0.290, start = 0.190, rise = 0.014, run = length - start;
  const BottomLine arc(length, {0.03, 0.005, start, rise, 0});
  CHECK(arc.lift(length) == Approx(rise).epsilon(1e-12));
  CHECK(arc.lift(0) == Approx(0.005).epsilon(1e-12));
  CHECK(arc.lift(0.1) == 0);
  CHECK(arc.slope(start) == 0);
  CHECK(arc.slope(0) < 0);
  const double radius = (run * run + rise * rise) / (2 * rise); // of chord and sagitta
  CHECK(arc.lift(start + 0.05) == Approx(radius - std::sqrt(radius * radius - 0.05 * 0.05)).epsilon(1e-12));

  const BottomLine rocker(length, {0, 0, start, rise, 0.1});
  CHECK(rocker.lift(length) == Approx(rise).epsilon(1e-12));
  CHECK(rocker.lift(start + 0.005) == Approx(0.1 - std::sqrt(0.01 - 25e-6)).epsilon(1e-12));
  const double slope = rocker.slope(length - 1e-3);
  CHECK(slope == Approx(rocker.slope(length - 5e-3)).epsilon(1e-12));
  CHECK((rocker.lift(length) - rocker.lift(length - 1e-3)) / 1e-3 == Approx(slope).epsilon(1e-9));
  CHECK_THROWS_AS(BottomLine(length, {0, 0, start, rise, 1.1 * radius}), InvalidGeometry);

  // A column stands upright on its own piece of the line and keeps its height.
  const auto foot = arc.placed(0.27, 0), top = arc.placed(0.27, 0.02);
  CHECK(std::hypot(top[0] - foot[0], top[1] - foot[1]) == Approx(0.02).epsilon(1e-12));
  CHECK((top[0] - foot[0]) + arc.slope(0.27) * (top[1] - foot[1]) == Approx(0).margin(1e-12));
}

TEST_CASE("figures in plan cover the area that the formula of an ellipse and of a rounded box gives")
{
  for (const auto form : {PlanFigure::Form::ellipse, PlanFigure::Form::box})
  {
    const PlanFigure figure{form, 0.1, -0.01, 0.05, 0.03, 0.008, 0.4};
    constexpr int    n = 1000;
    int              inside = 0;
    for (int i = 0; i < n; ++i)
      for (int j = 0; j < n; ++j)
        inside += covers(figure, {0.05 + 0.1 * (i + 0.5) / n, -0.06 + 0.1 * (j + 0.5) / n});
    CHECK(inside * 1e-8 == Approx(area(figure)).epsilon(1e-3));
    for (auto point : points_round(figure, 200))
    {
      for (const double by : {0.999, 1.001}) // of the way from the middle
        CHECK(covers(figure, {figure.x + by * (point[0] - figure.x),
                              figure.y + by * (point[1] - figure.y)}) == (by < 1));
    }
  }
}
