// SPDX-License-Identifier: Apache-2.0
// Lines that meet themselves at places known in closed form, and lines that only come near.
#include "geometry/meeting.h"
#include "tests/support/catch.h"

#include <cmath>
#include <vector>

using solemech::geometry::find_meeting;

namespace
{
using Points = std::vector<std::array<double, 2>>;

/// A hairpin: out along z = 0 in steps of one, back along z = gap.
Points hairpin(int n, double gap)
{
  Points line;
  for (int i = 0; i <= n; ++i)
    line.push_back({double(i), 0});
  for (int i = n; i >= 0; --i)
    line.push_back({double(i), gap});
  return line;
}

/// Bernoulli's lemniscate r^2 = cos 2t: a figure of eight whose branches cross at the origin, at right
/// angles.
Points lemniscate(int n)
{
  Points line;
  for (int i = 0; i < n; ++i)
  {
    const double t = 2 * M_PI * (i + 0.3) / n, across = 1 + std::sin(t) * std::sin(t);
    line.push_back({std::cos(t) / across, std::sin(t) * std::cos(t) / across});
  }
  line.push_back(line.front());
  return line;
}

Points arc(int n, double angle)
{
  Points line;
  for (int i = 0; i <= n; ++i)
    line.push_back({std::cos(angle * i / n), std::sin(angle * i / n)});
  return line;
}
} // namespace

TEST_CASE("straight lines, corners and round lines do not meet themselves", "[meeting]")
{
  CHECK_FALSE(find_meeting(Points{}, 0.05));
  CHECK_FALSE(find_meeting(Points{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}}, 0.05));
  CHECK_FALSE(find_meeting(Points{{0, 0}, {1, 0}, {1, -1}, {2, -1}, {2, 0}, {3, 0}}, 0.05));
  CHECK_FALSE(find_meeting(arc(200, 1.9 * M_PI), 0.05));
  auto circle = arc(200, 2 * M_PI);
  circle.back() = circle.front();
  CHECK_FALSE(find_meeting(circle, 0.05)); // closed: its seam is no meeting
}

TEST_CASE("two segments that cross are found at their crossing", "[meeting]")
{
  // The last segment runs from (4, 2) to (2, -2) and cuts z = 0 at r = 3.
  const auto met = find_meeting(Points{{0, 0}, {2.5, 0}, {5, 0}, {4, 2}, {2, -2}}, 0);
  REQUIRE(met);
  CHECK(met->first == 1);
  CHECK(met->second == 3);
  CHECK(met->place[0] == Approx(3));
  CHECK(met->place[1] == Approx(0).margin(1e-12));
}

TEST_CASE("a figure of eight meets itself in the middle, however fine", "[meeting]")
{
  for (const int n : {30, 100, 1000})
  {
    const auto line = lemniscate(n);
    const auto met = find_meeting(line, 0);
    REQUIRE(met);
    // A quarter and three quarters of the way round.
    CHECK(std::abs(met->first - 0.25 * n) <= 1);
    CHECK(std::abs(met->second - 0.75 * n) <= 1);
    // Chords leave a curve by less than the square of their length.
    CHECK(std::hypot(met->place[0], met->place[1]) < 40.0 / n / n);
    CHECK_FALSE(find_meeting(line, 0, [](std::size_t, std::size_t) { return true; }));
  }
}

TEST_CASE("a hairpin meets itself once its gap is below the wanted share of its segments", "[meeting]")
{
  constexpr double closeness =
    0.05; // of segments of length one; beside the bend the way round is the gap itself
  CHECK_FALSE(find_meeting(hairpin(40, 0.051), closeness));
  const auto met = find_meeting(hairpin(40, 0.049), closeness);
  REQUIRE(met);
  CHECK(met->place[1] == Approx(0.0245));
  // The end of the first segment lies over the start of the last one but one.
  CHECK(met->first == 0);
  CHECK(met->second >= 79);
  // Past each other, without any margin.
  CHECK(find_meeting(hairpin(40, 0), 0));
  CHECK_FALSE(find_meeting(hairpin(40, 1e-9), 0));
}

TEST_CASE("the opening of a nearly closed ring is its chord", "[meeting]")
{
  // Ends 2 sin(angle/2) apart, against segments of 2 sin(pi/n) or so.
  constexpr int n = 100;
  for (const double share : {0.9, 1.1})
  {
    const double opening = 0.1 * share * 2 * M_PI / n;
    CHECK(find_meeting(arc(n, 2 * M_PI - opening), 0.1).has_value() == (share < 1));
  }
}
