// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/rig_changes.h"

#include "tools/answers/compare/layer_words.h"
#include "tools/language/case_text.h"

#include <fmt/format.h>

#include <numbers>
#include <type_traits>

namespace solemech::tools
{
namespace
{
using Details = std::vector<ChangeDetail>;

/// Adds a row when the two texts differ.
void add(Details &details, const char *what, const std::string &from, const std::string &to)
{
  if (from != to)
    details.push_back({what, from, to});
}

std::string number(double value, const char *unit, double scale = 1)
{
  return fmt::format("{:.6g}{}{}", value * scale, *unit == '\0' ? "" : " ", unit);
}

template <typename Data>
bool same_text(const Data &a, const Data &b)
{
  solver::Case case_a, case_b;
  if constexpr (std::is_same_v<Data, solver::Rig>)
  {
    case_a.rig = a;
    case_b.rig = b;
  }
  else
  {
    case_a.plug = a;
    case_b.plug = b;
  }
  return canonical_text(case_a) == canonical_text(case_b);
}

void drop_rows(Details &details, const solver::DropRig &a, const solver::DropRig &b)
{
  add(details, "drop weight", number(a.mass, "kg"), number(b.mass, "kg"));
  add(details, "drop height", number(a.height, "mm", 1e3), number(b.height, "mm", 1e3));
  add(details, "guide loss", number(a.guide_loss, "%", 100), number(b.guide_loss, "%", 100));
  add(details, "hits counted", number(a.hits, ""), number(b.hits, ""));
  add(details, "hits before", number(a.discarded, ""), number(b.discarded, ""));
  add(details, "rest between hits", number(a.rest, "s"), number(b.rest, "s"));
  add(details, "conditioned", a.conditioned ? "yes" : "no", b.conditioned ? "yes" : "no");
  add(details, "base", a.base_mass > 0 ? number(a.base_mass, "kg") : "rigid",
      b.base_mass > 0 ? number(b.base_mass, "kg") : "rigid");
}

void abrasion_rows(Details &details, const solver::AbrasionRig &a, const solver::AbrasionRig &b)
{
  const char *tools[] = {"sleeve", "drum"};
  add(details, "tool", tools[static_cast<int>(a.tool)], tools[static_cast<int>(b.tool)]);
  add(details, "sleeve", number(a.sleeve.sleeve_diameter, "mm", 1e3), number(b.sleeve.sleeve_diameter, "mm", 1e3));
  add(details, "width of the sleeve", number(a.sleeve.sleeve_width, "mm", 1e3), number(b.sleeve.sleeve_width, "mm", 1e3));
  add(details, "turning speed", number(a.sleeve.speed, "rpm", 60), number(b.sleeve.speed, "rpm", 60));
  add(details, "force of the hand", number(a.sleeve.force, "N"), number(b.sleeve.force, "N"));
  add(details, "time held", number(a.seconds, "s"), number(b.seconds, "s"));
  add(details, "taken from the reference", number(a.coefficient, "mm3/(N m)", 1e9), number(b.coefficient, "mm3/(N m)", 1e9));
}

void press_rows(Details &details, const solver::PressRig &a, const solver::PressRig &b)
{
  const auto peak = [](const solver::PressRig &rig) {
    return rig.control == solver::PressControl::force ? number(rig.peak, "N") : number(rig.peak, "mm", 1e3);
  };
  const char *waves[] = {"up and down", "half sine", "table"};
  add(details, "peak", peak(a), peak(b));
  add(details, "wave", waves[static_cast<int>(a.wave)], waves[static_cast<int>(b.wave)]);
  add(details, "duration", number(a.duration, "ms", 1e3), number(b.duration, "ms", 1e3));
  add(details, "cycles", number(a.cycles, ""), number(b.cycles, ""));
  add(details, "rest between pulses", number(a.rest, "s"), number(b.rest, "s"));
}

double degrees(double angle)
{
  return angle * 180 / std::numbers::pi;
}

RigDifference court_difference(const solver::SlideRig &a, const solver::SlideRig &b)
{
  const auto friction = [](const solver::SlideRig &rig) {
    return number(rig.friction.mu_ref * rig.friction.state, "");
  };
  RigDifference court{"court", {}, [](solver::Case &to, const solver::Case &from) {
                        auto       &rig = std::get<solver::SlideRig>(to.rig);
                        const auto &other = std::get<solver::SlideRig>(from.rig);
                        rig.court = other.court, rig.court_state = other.court_state;
                        rig.friction = other.friction;
                        rig.friction_lowest = other.friction_lowest,
                        rig.friction_highest = other.friction_highest;
                        rig.court_heat = other.court_heat;
                      }};
  add(court.details, "court", a.court_state + " " + a.court, b.court_state + " " + b.court);
  add(court.details, "friction", friction(a), friction(b));
  return court;
}

RigDifference bar_difference(const solver::SlideRig &a, const solver::SlideRig &b)
{
  const char   *neighbours[] = {"move alike", "none"};
  RigDifference bar{"shape of the bar", {}, [](solver::Case &to, const solver::Case &from) {
                      auto       &rig = std::get<solver::SlideRig>(to.rig);
                      const auto &other = std::get<solver::SlideRig>(from.rig);
                      rig.lug = other.lug, rig.neighbours = other.neighbours;
                      rig.pad_length = other.pad_length, rig.pad_gap = other.pad_gap;
                      rig.tup = other.tup, rig.lug_heat = other.lug_heat;
                      to.plug.radius = from.plug.radius;
                    }};
  add(bar.details, "width of the bar", number(a.lug.width, "mm", 1e3), number(b.lug.width, "mm", 1e3));
  add(bar.details, "spacing of the bars", number(a.lug.spacing, "mm", 1e3), number(b.lug.spacing, "mm", 1e3));
  add(bar.details, "length of the pads", number(a.pad_length, "mm", 1e3), number(b.pad_length, "mm", 1e3));
  add(bar.details, "gap between pads", number(a.pad_gap, "mm", 1e3), number(b.pad_gap, "mm", 1e3));
  add(bar.details, "draft", number(degrees(a.lug.draft), "deg"), number(degrees(b.lug.draft), "deg"));
  add(bar.details, "edge radius of the bar", number(a.lug.edge_radius, "mm", 1e3),
      number(b.lug.edge_radius, "mm", 1e3));
  add(bar.details, "fillet at the root", number(a.lug.fillet, "mm", 1e3), number(b.lug.fillet, "mm", 1e3));
  add(bar.details, "neighbours", neighbours[static_cast<int>(a.neighbours)],
      neighbours[static_cast<int>(b.neighbours)]);
  if (a.lug.worn_face != b.lug.worn_face)
    bar.details.push_back(
      {"face", a.lug.worn_face.empty() ? "fresh" : "worn", b.lug.worn_face.empty() ? "fresh" : "worn"});
  return bar;
}

RigDifference way_difference(const solver::SlideRig &a, const solver::SlideRig &b)
{
  RigDifference way{"slide", {}, [](solver::Case &to, const solver::Case &from) {
                      auto       &rig = std::get<solver::SlideRig>(to.rig);
                      const auto &other = std::get<solver::SlideRig>(from.rig);
                      rig.pressure = other.pressure, rig.speed = other.speed;
                      rig.distance = other.distance, rig.heading = other.heading;
                      rig.wear = other.wear;
                    }};
  add(way.details, "pressure", number(a.pressure, "kPa", 1e-3), number(b.pressure, "kPa", 1e-3));
  add(way.details, "speed", number(a.speed, "m/s"), number(b.speed, "m/s"));
  add(way.details, "heading", number(degrees(a.heading), "deg"), number(degrees(b.heading), "deg"));
  add(way.details, "greatest way", number(a.distance, "mm", 1e3), number(b.distance, "mm", 1e3));
  const auto worn = [](const solver::SlideRig &rig, auto text) {
    return rig.wear ? text(*rig.wear) : std::string("no wear");
  };
  const auto row = [&](const char *what, auto text) { add(way.details, what, worn(a, text), worn(b, text)); };
  row("worn down by", [](const solver::WearLife &wear) { return number(wear.depth, "mm", 1e3); });
  row("slip of a step", [](const solver::WearLife &wear) { return number(wear.slip, "mm", 1e3); });
  row("slides",
      [](const solver::WearLife &wear) { return std::string(wear.to_and_fro ? "to and fro" : "one way"); });
  row("wear of the reference",
      [](const solver::WearLife &wear) { return number(wear.coefficient, "mm3/(N m)", 1e9); });
  return way;
}

/// Zones and loads of a whole sole.
RigDifference tread_difference(const solver::SlideRig &a, const solver::SlideRig &b)
{
  RigDifference pattern{"pattern of the tread", {}, [](solver::Case &to, const solver::Case &from) {
                          std::get<solver::SlideRig>(to.rig).tread = std::get<solver::SlideRig>(from.rig).tread;
                        }};
  const auto sole = [](const solver::SlideRig &rig) {
    return rig.tread ? fmt::format("{} zones under {:.0f} N", rig.tread->zones.size(), rig.tread->force) : std::string("one bar");
  };
  add(pattern.details, "sole", sole(a), sole(b));
  const auto words = [](const solver::SlideRig &rig, const std::string &name) {
    for (const auto &zone : rig.tread ? rig.tread->zones : std::vector<solver::TreadZone>())
      if (zone.name == name)
        return fmt::format("{:.0f} x {:.0f} mm at {:.0f}, {:.0f} mm, bars {:.0f} deg, arms {:.0f} deg, {}", 1e3 * zone.length,
                           1e3 * zone.width, 1e3 * zone.x, 1e3 * zone.y, degrees(zone.bar_heading), degrees(zone.arm_angle),
                           zone.rubber ? zone.rubber->name : "rubber of the lug");
    return std::string("none");
  };
  for (const auto *rig : {&a, &b})
    for (const auto &zone : rig->tread ? rig->tread->zones : std::vector<solver::TreadZone>())
      if (rig == &a || words(a, zone.name) == "none")
        add(pattern.details, ("zone " + zone.name).c_str(), words(a, zone.name), words(b, zone.name));
  // Same parts, other loads: only the texts of the rigs tell.
  solver::SlideRig sole_a, sole_b;
  sole_a.tread = a.tread, sole_b.tread = b.tread;
  if (pattern.details.empty() && !same_text(solver::Rig(sole_a), solver::Rig(sole_b)))
    pattern.details.push_back({"loads and foot", "its own", "its own"});
  return pattern;
}

std::vector<RigDifference> slide_differences(const solver::SlideRig &a, const solver::SlideRig &b)
{
  std::vector<RigDifference> differences;
  for (auto &part : {court_difference(a, b), bar_difference(a, b), tread_difference(a, b), way_difference(a, b)})
    if (!part.details.empty())
      differences.push_back(part);
  for (auto &part : differences)
    if (part.details.size() == 1)
      part.name = part.details[0].what;
  return differences;
}

} // namespace

const char *rig_kind(const solver::Rig &rig)
{
  const char *kinds[] = {"drop", "press", "gauge", "slide", "abrasion"};
  return kinds[rig.index()];
}

std::vector<RigDifference> rig_differences(const solver::Case &case_a, const solver::Case &case_b)
{
  const auto &a = case_a.rig, &b = case_b.rig;
  if (same_text(a, b))
    return {};
  const auto whole = [](solver::Case &to, const solver::Case &from) { to.rig = from.rig; };
  if (a.index() != b.index())
    return {{"rig", {{"rig", rig_kind(a), rig_kind(b)}}, whole}};
  if (const auto *slide = std::get_if<solver::SlideRig>(&a))
    return slide_differences(*slide, std::get<solver::SlideRig>(b));
  Details details;
  add(details, "striker", tup_words(tup_of(a)), tup_words(tup_of(b)));
  add(details, "edge of the striker", number(tup_of(a).edge_radius, "mm", 1e3),
      number(tup_of(b).edge_radius, "mm", 1e3));
  add(details, "friction of the striker", number(tup_of(a).friction, ""), number(tup_of(b).friction, ""));
  if (const auto *drop = std::get_if<solver::DropRig>(&a))
    drop_rows(details, *drop, std::get<solver::DropRig>(b));
  else if (const auto *press = std::get_if<solver::PressRig>(&a))
    press_rows(details, *press, std::get<solver::PressRig>(b));
  else if (const auto *gauge = std::get_if<solver::DurometerRig>(&a))
    add(details, "read after", number(gauge->read_after, "s"),
        number(std::get<solver::DurometerRig>(b).read_after, "s"));
  else if (const auto *bench = std::get_if<solver::AbrasionRig>(&a))
    abrasion_rows(details, *bench, std::get<solver::AbrasionRig>(b));
  if (details.empty())
    details.push_back({"rig", "its other entries", "its other entries"});
  return {{details.size() == 1 ? details[0].what : "rig", details, whole}};
}

std::vector<ChangeDetail> plug_details(const solver::Plug &a, const solver::Plug &b)
{
  Details      details;
  solver::Plug same_radius = b;
  same_radius.radius = a.radius;
  if (same_text(a, same_radius))
    return details;
  const char *sections[] = {"round plug", "slice"};
  const auto  side = [](const solver::Plug &plug) {
    switch (plug.side)
    {
    case solver::Side::free:
      return std::string("cut free");
    case solver::Side::ring:
      return fmt::format("wrapped in {} {}", short_length(plug.side_thickness), plug.side_material.name);
    case solver::Side::shell:
      return fmt::format("shell left on, {:.3g} N/mm3", plug.shell_stiffness * 1e-9);
    }
    return std::string();
  };
  const auto base = [](const solver::Plug &plug) {
    const char *words[] = {"bonded", "resting", "clamped", "sliding"};
    return std::string(words[static_cast<int>(plug.base)]) +
           (plug.base == solver::Base::resting ? fmt::format(", friction {:.2g}", plug.base_friction) : "");
  };
  add(details, "section", sections[static_cast<int>(a.section)], sections[static_cast<int>(b.section)]);
  add(details, "side of the plug", side(a), side(b));
  add(details, "base of the plug", base(a), base(b));
  // Entries without effect, such as the friction of a bonded base, are no difference.
  return details;
}

std::vector<ChangeDetail> surroundings_details(const solver::Case &a, const solver::Case &b)
{
  Details details;
  add(details, "temperature", number(a.temperature - 273.15, "°C"), number(b.temperature - 273.15, "°C"));
  add(details, "gravity", number(a.gravity, "m/s2"), number(b.gravity, "m/s2"));
  add(details, "air pressure", number(a.atmospheric_pressure, "kPa", 1e-3),
      number(b.atmospheric_pressure, "kPa", 1e-3));
  return details;
}
} // namespace solemech::tools
