// SPDX-License-Identifier: Apache-2.0
// Between two slides court, shape of the bar, pattern of the tread and the way it is led are changes of their
// own.
#include "tools/language/described_rigs.h"
#include "tools/language/member_differences.h"
#include "tools/rigs/court_bar.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

#include <numbers>

namespace solemech::tools::rigs
{
namespace
{
using solver::SlideRig;

double degrees(double angle)
{
  return angle * 180 / std::numbers::pi;
}

RigDifference court_difference(const SlideRig &a, const SlideRig &b)
{
  const auto friction = [](const SlideRig &rig) {
    return quantity(rig.friction.mu_ref * rig.friction.state, "");
  };
  RigDifference court{"court", {}, [](solver::Case &to, const solver::Case &from) {
                        auto       &rig = numbers_of<SlideRig>(to);
                        const auto &other = numbers_of<SlideRig>(from);
                        rig.court = other.court, rig.court_state = other.court_state;
                        rig.friction = other.friction;
                        rig.friction_lowest = other.friction_lowest,
                        rig.friction_highest = other.friction_highest;
                        rig.court_heat = other.court_heat;
                      }};
  add_row(court.details, "court", a.court_state + " " + a.court, b.court_state + " " + b.court);
  add_row(court.details, "friction", friction(a), friction(b));
  return court;
}

RigDifference bar_difference(const SlideRig &a, const SlideRig &b)
{
  const char   *neighbours[] = {"move together", "none"};
  RigDifference bar{"shape of the bar", {}, [](solver::Case &to, const solver::Case &from) {
                      auto       &rig = numbers_of<SlideRig>(to);
                      const auto &other = numbers_of<SlideRig>(from);
                      rig.lug = other.lug, rig.neighbours = other.neighbours;
                      rig.pad_length = other.pad_length, rig.pad_gap = other.pad_gap;
                      rig.tup = other.tup, rig.lug_heat = other.lug_heat;
                      to.plug.radius = from.plug.radius;
                    }};
  add_differences(bar.details, a.lug, b.lug);
  add_row(bar.details, "length of the pads", quantity(a.pad_length, "mm", 1e3),
          quantity(b.pad_length, "mm", 1e3));
  add_row(bar.details, "gap between pads", quantity(a.pad_gap, "mm", 1e3), quantity(b.pad_gap, "mm", 1e3));
  add_row(bar.details, "neighbours", neighbours[static_cast<int>(a.neighbours)],
          neighbours[static_cast<int>(b.neighbours)]);
  if (a.lug.worn_face != b.lug.worn_face)
    bar.details.push_back(
      {"face", a.lug.worn_face.empty() ? "fresh" : "worn", b.lug.worn_face.empty() ? "fresh" : "worn"});
  return bar;
}

RigDifference way_difference(const SlideRig &a, const SlideRig &b)
{
  RigDifference way{"slide", {}, [](solver::Case &to, const solver::Case &from) {
                      auto       &rig = numbers_of<SlideRig>(to);
                      const auto &other = numbers_of<SlideRig>(from);
                      rig.pressure = other.pressure, rig.speed = other.speed;
                      rig.distance = other.distance, rig.heading = other.heading;
                      rig.wear = other.wear;
                    }};
  add_row(way.details, "pressure", quantity(a.pressure, "kPa", 1e-3), quantity(b.pressure, "kPa", 1e-3));
  add_row(way.details, "speed", quantity(a.speed, "m/s"), quantity(b.speed, "m/s"));
  add_row(way.details, "heading", quantity(degrees(a.heading), "deg"), quantity(degrees(b.heading), "deg"));
  add_row(way.details, "longest distance", quantity(a.distance, "mm", 1e3), quantity(b.distance, "mm", 1e3));
  const auto worn = [](const SlideRig &rig, auto text) {
    return rig.wear ? text(*rig.wear) : std::string("no wear");
  };
  const auto row = [&](const char *what, auto text) {
    add_row(way.details, what, worn(a, text), worn(b, text));
  };
  row("worn down by", [](const solver::WearLife &wear) { return quantity(wear.depth, "mm", 1e3); });
  row("slip per step", [](const solver::WearLife &wear) { return quantity(wear.slip, "mm", 1e3); });
  row("slides",
      [](const solver::WearLife &wear) { return std::string(wear.to_and_fro ? "both ways" : "one way"); });
  row("wear of the reference",
      [](const solver::WearLife &wear) { return quantity(wear.coefficient, "mm3/(N m)", 1e9); });
  return way;
}

/// Zones and loads of a whole sole.
RigDifference tread_difference(const SlideRig &a, const SlideRig &b)
{
  RigDifference pattern{"pattern of the tread", {}, [](solver::Case &to, const solver::Case &from) {
                          numbers_of<SlideRig>(to).tread = numbers_of<SlideRig>(from).tread;
                        }};
  const auto    sole = [](const SlideRig &rig) {
    return rig.tread ? fmt::format("{} zones under {:.0f} N", rig.tread->zones.size(), rig.tread->force)
                        : std::string("one bar");
  };
  add_row(pattern.details, "sole", sole(a), sole(b));
  const auto words = [](const SlideRig &rig, const std::string &name) {
    for (const auto &zone : rig.tread ? rig.tread->zones : std::vector<solver::TreadZone>())
      if (zone.name == name)
        return fmt::format("{:.0f} x {:.0f} mm at {:.0f}, {:.0f} mm, bars {:.0f} deg, arms {:.0f} deg, {}",
                           1e3 * zone.length, 1e3 * zone.width, 1e3 * zone.x, 1e3 * zone.y,
                           degrees(zone.bar_heading), degrees(zone.arm_angle),
                           zone.rubber ? zone.rubber->name : "rubber of the lug");
    return std::string("none");
  };
  for (const auto *rig : {&a, &b})
    for (const auto &zone : rig->tread ? rig->tread->zones : std::vector<solver::TreadZone>())
      if (rig == &a || words(a, zone.name) == "none")
        add_row(pattern.details, ("zone " + zone.name).c_str(), words(a, zone.name), words(b, zone.name));
  // Same parts, other loads: only the texts of the rigs tell.
  SlideRig sole_a, sole_b;
  sole_a.tread = a.tread, sole_b.tread = b.tread;
  if (pattern.details.empty() && !same_rig(sole_a, sole_b))
    pattern.details.push_back({"loads and foot", "its own", "its own"});
  return pattern;
}
} // namespace

std::vector<RigDifference> CourtBar::differences(const solver::Case &from, const solver::Case &to) const
{
  const auto                &a = numbers_of<SlideRig>(from), &b = numbers_of<SlideRig>(to);
  std::vector<RigDifference> differences;
  for (auto &part :
       {court_difference(a, b), bar_difference(a, b), tread_difference(a, b), way_difference(a, b)})
    if (!part.details.empty())
      differences.push_back(part);
  for (auto &part : differences)
    if (part.details.size() == 1)
      part.name = part.details[0].what;
  return differences;
}
} // namespace solemech::tools::rigs
