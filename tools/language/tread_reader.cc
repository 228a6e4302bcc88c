// SPDX-License-Identifier: Apache-2.0
#include "tools/language/tread_reader.h"

#include "tools/language/described_rigs.h"
#include "tools/language/member_reader.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
using materials::Dimension;
using materials::Fields;
using materials::quantity_text;

namespace
{
constexpr double touching = 1e-9;     // zones may share an edge [m]
constexpr double most_pressure = 5e6; // on the faces of the bars, as of a single slide [Pa]

bool overlap(const solver::TreadZone &a, const solver::TreadZone &b)
{
  return std::abs(a.x - b.x) < 0.5 * (a.length + b.length) - touching &&
         std::abs(a.y - b.y) < 0.5 * (a.width + b.width) - touching;
}

/// Whether a rectangle reaches over the foot, taken as a rectangle of its length and width.
const char *outside_entry(const solver::TreadZone &zone, const solver::Tread &tread)
{
  if (zone.x - 0.5 * zone.length < -touching || zone.x + 0.5 * zone.length > tread.foot_length + touching)
    return "x";
  return std::abs(zone.y) + 0.5 * zone.width > 0.5 * tread.foot_width + touching ? "y" : nullptr;
}
} // namespace

solver::Tread read_tread(const Fields &fields)
{
  solver::Tread tread;
  read_members(fields, tread);
  if (tread.ball > tread.foot_length)
    fields.problem("ball", "lies ahead of the foot", "Give less than foot_length");
  if (tread.lowest_moment > tread.highest_moment)
    fields.problem("lowest_moment", "is more than highest_moment", "Give less");
  return tread;
}

solver::TreadZone read_zone(const Fields &fields, const solver::Tread &before, const solver::SlideRig &rig)
{
  solver::TreadZone zone;
  zone.arm_angle = rig.heading;
  read_members(fields, zone);
  if (zone.name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") !=
      std::string::npos)
    fields.problem("name", fmt::format("\"{}\" cannot be used as a name", zone.name),
                   "Use letters, digits, - and _ in zone names");
  if (const char *entry = outside_entry(zone, before))
    fields.problem(
      entry, "the zone extends beyond the edge of the foot",
      fmt::format("The foot is {} long and {} wide: move the zone, make it smaller or give a larger foot",
                  quantity_text(before.foot_length, Dimension::length),
                  quantity_text(before.foot_width, Dimension::length)));
  for (const auto &other : before.zones)
  {
    if (other.name == zone.name)
      fields.problem("name", "there is a zone of this name", "Give each zone a name of its own");
    else if (overlap(zone, other))
      fields.problem("x", fmt::format("overlaps the zone {}", other.name),
                     "Move one of them, or make it smaller");
  }
  return zone;
}

void check_tread(const Fields &of_tread, const Fields &of_lug, const Fields &of_slide,
                 const solver::Tread &tread, const solver::SlideRig &rig)
{
  for (const char *name : {"pressure", "heading"})
    if (of_slide.given(name))
      of_slide.problem(name, "has no meaning for a whole tread",
                       "Remove the line: it follows from [tread] and [[zone]]");
  if (of_lug.text("neighbours") == "none")
    of_lug.problem("neighbours", "a tread always has bars beside each bar", "Remove the line");
  const std::pair<const char *, double solver::TreadZone::*> loads[] = {
    {"push_off", &solver::TreadZone::push_off},
    {"braking", &solver::TreadZone::braking},
    {"side_cut", &solver::TreadZone::side_cut}};
  for (const auto &[name, load] : loads)
  {
    double whole = 0;
    for (const auto &zone : tread.zones)
      whole += zone.*load;
    if (!(whole > 0))
    {
      of_tread.problem("force", fmt::format("no zone carries this load: {} is 0 everywhere", name),
                       fmt::format("Give {} = 1 in one zone", name));
      continue;
    }
    for (const auto &zone : tread.zones)
    {
      const double pressure =
        tread.force * zone.*load / whole / (zone.length * zone.width * rig.lug.width / rig.lug.spacing);
      if (pressure > most_pressure)
        of_tread.problem("force",
                         fmt::format("presses the bars of {} with {}, {} is allowed", zone.name,
                                     quantity_text(pressure, Dimension::pressure),
                                     quantity_text(most_pressure, Dimension::pressure)),
                         "Give less force, a larger zone or a wider bar");
    }
  }
}
} // namespace solemech::tools
