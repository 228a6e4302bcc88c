// SPDX-License-Identifier: Apache-2.0
#include "tools/language/rig_reader.h"

#include "tools/language/described_rigs.h"
#include "tools/language/fields.h"
#include "tools/language/history_file.h"
#include "tools/language/member_reader.h"
#include "tools/language/schema.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
using materials::Fields;
using materials::Problems;

namespace
{
/// What the shape of a striker asks for.
void check_striker(const Fields &fields, solver::Tup &tup)
{
  if (tup.shape == solver::TupShape::sphere)
    tup.edge_radius = 0;
  if (tup.edge_radius > tup.diameter / 2)
    fields.problem("edge_radius", "is more than the radius of the striker", "Give a smaller edge radius");
  if (tup.shape == solver::TupShape::spherical_ended && !(tup.end_radius >= tup.diameter / 2))
    fields.problem("end_radius",
                   fields.given("end_radius") ? "is less than the radius of the striker" : "is missing",
                   "Give the radius of the spherical end, e.g. end_radius = \"30 mm\"");
  if (tup.shape != solver::TupShape::spherical_ended && fields.given("end_radius"))
    fields.problem("end_radius", "has no meaning for this striker",
                   "Remove the line, or shape = \"spherical-ended\"");
  if (tup.shape == solver::TupShape::sphere && fields.given("edge_radius"))
    fields.problem("edge_radius", "has no meaning for a sphere", "Remove the line");
}

/// A course from a file; `weight` [N] is one body weight.
void history(const Fields &fields, solver::PressRig &rig, double weight, SheetFolder &folder,
             Problems &problems)
{
  for (const char *name : {"wave", "duration"})
    if (fields.given(name))
      fields.problem(name, "has no meaning together with a history", "Remove the line");
  const auto of = fields.text("history_of");
  const auto name = fields.text("history");
  rig.wave = solver::PressWave::table;
  rig.control = of == "travel" ? solver::PressControl::displacement : solver::PressControl::force;
  const auto found = folder.data("history", name);
  if (found.file.state != materials::FileText::State::read)
  {
    const bool is_missing = found.file.state == materials::FileText::State::missing;
    fields.problem("history",
                   is_missing ? fmt::format("there is no file \"{}\" beside the case file", name)
                              : fmt::format("\"{}\": {}", name, found.file.reason),
                   found.file.cure);
    return;
  }
  const double scale = of == "travel" ? 1e-3 : of == "force" ? 1. : weight;
  rig.table = read_history(found.shown, found.file.text, scale, problems);
  for (const auto &[time, value] : rig.table)
  {
    rig.peak = std::max(rig.peak, value);
    rig.duration = time;
  }
}
} // namespace

solver::DropRig read_drop(const toml::table &block, double gravity, Problems &problems)
{
  const Fields    fields(block, "drop", "drop", case_entries(), problems);
  solver::DropRig rig;
  read_members(fields, rig);
  check_striker(fields, rig.tup);
  if (fields.given("energy"))
    rig.height = fields.value("energy") / (rig.mass * gravity);
  else if (!fields.given("height"))
    fields.problem("height", "is missing", "Give height = \"400 mm\" or energy = \"5 J\"");
  if (rig.base_mass > 0 && rig.base_stiffness == 0)
    fields.problem("base_mass", "the base has a mass but no spring",
                   "Add base_stiffness, or leave the base rigid");
  if (rig.base_mass == 0 && (rig.base_stiffness > 0 || rig.base_damping > 0))
    fields.problem(rig.base_stiffness > 0 ? "base_stiffness" : "base_damping", "the base has no mass",
                   "Add base_mass = \"25 kg\"");
  return rig;
}

solver::DropRig read_ball(const toml::table &block, Problems &problems)
{
  const Fields    fields(block, "ball", "ball", case_entries(), problems);
  solver::DropRig rig;
  rig.tup.shape = solver::TupShape::sphere;
  rig.tup.diameter = fields.value("diameter");
  rig.tup.friction = fields.value("friction");
  rig.mass = fields.value("mass");
  rig.height = fields.value("height");
  rig.hits = fields.count("hits");
  rig.rest = fields.value("rest");
  return rig;
}

solver::PressRig read_press(const toml::table &block, double gravity, SheetFolder &folder, Problems &problems)
{
  const Fields     fields(block, "press", "press", case_entries(), problems);
  solver::PressRig rig;
  read_members(fields, rig);
  check_striker(fields, rig.tup);
  const auto mass = fields.given("body_mass") ? fields.value("body_mass") : 0;

  int n_given = 0;
  for (const char *name : {"peak_force", "peak_displacement", "peak_body_weights", "history"})
    if (fields.given(name) && ++n_given > 1 && name != std::string("peak_displacement"))
      fields.problem(name, "the press is driven in another way as well", "Keep one of them");
  const bool weights = fields.given("peak_body_weights") ||
                       (fields.given("history") && fields.text("history_of") == "body weights");
  if (weights && !fields.given("body_mass"))
    fields.problem("body_mass", "is missing", "Give body_mass = \"80 kg\": body weights refer to it");
  if (!weights && fields.given("body_mass"))
    fields.problem("body_mass", "has no meaning here", "Remove it, or give peak_body_weights");
  if (n_given == 0)
    fields.problem("peak_force", "is missing",
                   "Give peak_force = \"2000 N\", peak_displacement = \"8 mm\", or a history");
  if (fields.given("peak_displacement"))
    rig.peak = fields.value("peak_displacement");
  else
    rig.control = solver::PressControl::force;
  if (fields.given("peak_force"))
    rig.peak = fields.value("peak_force");
  if (fields.given("peak_body_weights"))
    rig.peak = fields.value("peak_body_weights") * mass * gravity;
  if (fields.given("history"))
    history(fields, rig, mass * gravity, folder, problems);
  return rig;
}

solver::HoldRig read_hold(const toml::table &block, Problems &problems)
{
  const Fields    fields(block, "hold", "hold", case_entries(), problems);
  solver::HoldRig rig;
  read_members(fields, rig);
  check_striker(fields, rig.tup);
  if (!fields.given("squeeze") && !fields.given("load"))
    fields.problem("squeeze", "is missing", "Give squeeze = \"50 %\" or load = \"300 N\"");
  return rig;
}

solver::DurometerRig read_durometer(const toml::table &block, Problems &problems)
{
  const Fields         fields(block, "durometer", "durometer", case_entries(), problems);
  solver::DurometerRig rig;
  const auto           scale = fields.text("scale");
  for (const auto &gauge : materials::gauges)
    if (gauge.name == scale)
      rig.gauge = gauge;
  rig.tup = solver::gauge_tip(rig.gauge);
  rig.tup.friction = fields.value("tip_friction");
  read_members(fields, rig);
  if (const auto wanted = fields.hardness("wanted"))
  {
    rig.wanted = wanted->value;
    if (wanted->scale != scale && !scale.empty())
      fields.problem("wanted", fmt::format("is on another scale than that of the gauge, {}", scale),
                     fmt::format("Write wanted = \"{:g} {}\"", wanted->value, scale));
  }
  return rig;
}
} // namespace solemech::tools
