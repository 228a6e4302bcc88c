// SPDX-License-Identifier: Apache-2.0
// A plug that cannot be built is refused with the dimension, its value and what is allowed.
#include "geometry/errors.h"
#include "tests/support/catch.h"
#include "tests/unit/geometry/sample_outlines.h"

#include <cmath>
#include <functional>

using namespace solemech;
using geometry::InvalidGeometry;
using geometry::PlugOutline;

namespace
{
std::string refusal(PlugOutline outline, const std::function<void(PlugOutline &)> &spoil)
{
  spoil(outline);
  try
  {
    geometry::check(outline);
  }
  catch (const InvalidGeometry &error)
  {
    return error.what();
  }
  return "accepted";
}
} // namespace

TEST_CASE("The sample plugs are accepted")
{
  CHECK_NOTHROW(geometry::check(tests::foam_cylinder()));
  CHECK_NOTHROW(geometry::check(tests::heel_plug()));
  CHECK_NOTHROW(geometry::check(tests::forefoot_plug()));
  CHECK_NOTHROW(geometry::check(tests::two_unit_plug()));
  CHECK(geometry::height(tests::forefoot_plug()) == Approx(23.2e-3).epsilon(1e-12)); // sum of its layers
}

TEST_CASE("Messages name the dimension, its value and the allowed range")
{
  const PlugOutline forefoot = tests::forefoot_plug();
  CHECK(refusal(forefoot, [](auto &o) { o.strips[4].chamber->outer_radius = 45e-3; }) ==
        "air unit diameter in strip 5 from the ground is 90 mm; allowed: 1.4 mm to 84 mm (the plug)");
  CHECK(refusal(forefoot, [](auto &o) { o.strips[4].chamber->film_thickness = 4e-3; }) ==
        "film thickness in strip 5 from the ground is 4 mm; allowed: at most 3.95 mm "
        "(two films and a void share the layer)");
  CHECK(refusal(forefoot, [](auto &o) { o.strips[0].thickness = -2e-3; }) ==
        "thickness of strip 1 from the ground is -2 mm; allowed: at least 0.1 mm");
  CHECK(refusal(forefoot, [](auto &o) { o.strips[2].zones[0].outer_radius = 40e-3; }) ==
        "outermost zone radius in strip 3 from the ground is 40 mm; allowed: 42 mm (the plug)");
}

TEST_CASE("Every dimension is checked, NaN included")
{
  const PlugOutline heel = tests::heel_plug(), forefoot = tests::forefoot_plug();
  const std::vector<std::function<void(PlugOutline &)>> spoilt{
    [](auto &o) { o.strips.clear(); },
    [](auto &o) { o.strips[1].zones.clear(); },
    [](auto &o) { o.strips[1].thickness = std::nan(""); },
    [](auto &o) { o.strips[1].thickness = INFINITY; },
    [](auto &o) { o.strips[1].thickness = 0.09e-3; },
    [](auto &o) { o.radius = std::nan(""); },
    [](auto &o) { o.radius = -o.radius; },
    [](auto &o) { o.strips[3].zones[0].outer_radius = 50e-3; },
    [](auto &o) { o.strips[3].zones[0].outer_radius = 0; },
    [](auto &o) { o.strips[3].zones[0].part = 5; },
    [](auto &o) { o.strips[3].zones[0].part = -1; },
    [](auto &o) { o.tup_contact_radius = 0; },
    [](auto &o) { o.tup_edge_radius = -1e-3; },
    [](auto &o) { o.wall_thickness = -1e-3; },
    [](auto &o) {
      o.wall_thickness = 2e-3;
      o.wall_part = 9;
    },
  };
  for (std::size_t i = 0; i < spoilt.size(); ++i)
  {
    INFO("dimension " << i);
    CHECK(refusal(heel, spoilt[i]) != "accepted");
  }
  CHECK(refusal(forefoot, [](auto &o) { o.strips[4].chamber->film_thickness = 0; }) != "accepted");
  CHECK(refusal(forefoot, [](auto &o) { o.strips[4].chamber->outer_radius = 0.6e-3; }) != "accepted");
  CHECK(refusal(forefoot, [](auto &o) { o.strips[4].chamber->film_part = 6; }) != "accepted");
}

TEST_CASE("An error keeps its numbers for programs")
{
  const InvalidGeometry error("striker radius", -0.01, "more than 0 mm");
  CHECK(error.name() == "striker radius");
  CHECK(error.value() == -0.01);
  CHECK(error.allowed() == "more than 0 mm");
}
