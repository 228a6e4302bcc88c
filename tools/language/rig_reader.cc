// SPDX-License-Identifier: Apache-2.0
#include "tools/language/rig_reader.h"

#include "tools/language/described_rigs.h"
#include "tools/language/fields.h"
#include "tools/language/history_file.h"
#include "tools/language/member_reader.h"
#include "tools/language/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <concepts>

namespace solemech::tools
{
using materials::Fields;

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
void history(const RigSheet &sheet, solver::PressRig &rig, double weight)
{
  const auto &fields = sheet.fields;
  for (const char *name : {"wave", "duration"})
    if (fields.given(name))
      fields.problem(name, "has no meaning together with a history", "Remove the line");
  const auto of = fields.text("history_of");
  const auto name = fields.text("history");
  rig.wave = solver::PressWave::table;
  rig.control = of == "travel" ? solver::PressControl::displacement : solver::PressControl::force;
  const auto found = sheet.folder.data("history", name);
  if (found.file.state != materials::FileText::State::read)
  {
    const bool is_missing = found.file.state == materials::FileText::State::missing;
    fields.problem("history",
                   is_missing ? fmt::format("there is no file \"{}\" in the folder of the case file", name)
                              : fmt::format("\"{}\": {}", name, found.file.reason),
                   found.file.cure);
    return;
  }
  const double scale = of == "travel" ? 1e-3 : of == "force" ? 1. : weight;
  rig.table = read_history(found.shown, found.file.text, scale, sheet.problems);
  for (const auto &[time, value] : rig.table)
  {
    rig.peak = std::max(rig.peak, value);
    rig.duration = time;
  }
}

/// A rig from its block, as its description says.
template <typename Rig>
Rig read_described(const RigSheet &sheet)
{
  using Of = Description<Rig>;
  Rig rig;
  if constexpr (requires { Of::start(sheet, rig); })
    Of::start(sheet, rig);
  read_members(sheet.fields, rig);
  for_each_member<Rig>([&](const auto &item) {
    if constexpr (std::same_as<std::remove_cvref_t<decltype(rig.*item.at)>, solver::Tup>)
      if (!item.is_resolved)
        check_striker(sheet.fields, rig.*item.at);
  });
  if constexpr (requires { Of::needed; })
    if (!sheet.fields.given(Of::needed.first) && !sheet.fields.given(Of::needed.second))
      sheet.fields.problem(Of::needed.first, "is missing", std::string(Of::needed.cure));
  if constexpr (requires { Of::finish(sheet, rig); })
    Of::finish(sheet, rig);
  return rig;
}
} // namespace

void Description<solver::DropRig>::finish(const RigSheet &sheet, S &rig)
{
  const auto &fields = sheet.fields;
  if (fields.given("energy"))
    rig.height = fields.value("energy") / (rig.mass * sheet.gravity);
  if (rig.base_mass > 0 && rig.base_stiffness == 0)
    fields.problem("base_mass", "the base has a mass but no spring",
                   "Add base_stiffness, or leave the base rigid");
  if (rig.base_mass == 0 && (rig.base_stiffness > 0 || rig.base_damping > 0))
    fields.problem(rig.base_stiffness > 0 ? "base_stiffness" : "base_damping", "the base has no mass",
                   "Add base_mass = \"25 kg\"");
}

solver::DropRig Description<Ball>::as_rig(const Ball &ball)
{
  solver::DropRig rig;
  rig.tup.shape = solver::TupShape::sphere;
  rig.tup.diameter = ball.diameter;
  rig.tup.friction = ball.friction;
  rig.mass = ball.mass;
  rig.height = ball.height;
  rig.hits = ball.hits;
  rig.rest = ball.rest;
  return rig;
}

void Description<solver::PressRig>::finish(const RigSheet &sheet, S &rig)
{
  const auto &fields = sheet.fields;
  const auto  mass = fields.given("body_mass") ? fields.value("body_mass") : 0;

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
    rig.peak = fields.value("peak_body_weights") * mass * sheet.gravity;
  if (fields.given("history"))
    history(sheet, rig, mass * sheet.gravity);
}

void Description<solver::DurometerRig>::start(const RigSheet &sheet, S &rig)
{
  const auto scale = sheet.fields.text("scale");
  for (const auto &gauge : materials::gauges)
    if (gauge.name == scale)
      rig.gauge = gauge;
  rig.tup = solver::gauge_tip(rig.gauge);
  rig.tup.friction = sheet.fields.value("tip_friction");
}

void Description<solver::DurometerRig>::finish(const RigSheet &sheet, S &rig)
{
  const auto &fields = sheet.fields;
  const auto  scale = fields.text("scale");
  if (const auto wanted = fields.hardness("wanted"))
  {
    rig.wanted = wanted->value;
    if (wanted->scale != scale && !scale.empty())
      fields.problem("wanted", fmt::format("is on another scale than that of the gauge, {}", scale),
                     fmt::format("Write wanted = \"{:g} {}\"", wanted->value, scale));
  }
}

void Description<solver::AbrasionRig>::start(const RigSheet &sheet, S &rig)
{
  const auto &fields = sheet.fields;
  const bool  drum = fields.text("tool") == "drum";
  rig.tool = drum ? solver::AbrasionTool::drum : solver::AbrasionTool::sleeve;
  for_each_idle_entry(rig, [&](std::string_view name) {
    if (fields.given(name))
      fields.problem(name, fmt::format("has no meaning for a {}", drum ? "drum" : "sleeve"),
                     "Remove the line");
  });
}

void Description<solver::AbrasionRig>::finish(const RigSheet &sheet, S &rig)
{
  const auto &fields = sheet.fields;
  const bool  drum = is_drum(rig);
  rig.tup.diameter = drum ? rig.drum.piece_diameter : rig.sleeve.sleeve_diameter;
  if (drum && fields.given("mass_lost") != fields.given("cloth_loss"))
    fields.problem(
      fields.given("mass_lost") ? "mass_lost" : "cloth_loss", "stands alone",
      "The standard needs both mass_lost and cloth_loss: it corrects for the sharpness of the cloth");
  if (!fields.word("coefficient_lowest").empty())
    rig.lowest = 1.0 / 3 * rig.coefficient;
  if (!fields.word("coefficient_highest").empty())
    rig.highest = 3 * rig.coefficient;
  if (rig.lowest > rig.coefficient)
    fields.problem("coefficient_lowest", "is more than the coefficient", "Give less, or remove the line");
  if (rig.highest < rig.coefficient)
    fields.problem("coefficient_highest", "is less than the coefficient", "Give more, or remove the line");
  const auto reference = sheet.rubber(fields, "reference");
  rig.reference = reference.name;
  if (const auto *rubber = std::get_if<materials::RubberData>(&reference.data))
    rig.reference_modulus = rubber->youngs_modulus();
}

std::optional<solver::Rig> read_rig(std::string_view name, const RigSheet &sheet)
{
  std::optional<solver::Rig> rig;
  for_each_rig_block([&]<typename Struct>() {
    if constexpr (Description<Struct>::block.of == BlockOf::bench)
      if (Description<Struct>::block.name == name)
      {
        const auto read = read_described<Struct>(sheet);
        if constexpr (requires { Description<Struct>::as_rig(read); })
          rig = Description<Struct>::as_rig(read);
        else
          rig = read;
      }
  });
  return rig;
}

double least_plug_radius(const solver::Rig &rig)
{
  return std::visit(
    []<typename Struct>(const Struct &) {
      if constexpr (requires { Description<Struct>::least_plug; })
        return Description<Struct>::least_plug;
      else
        return 0.0;
    },
    rig);
}
} // namespace solemech::tools
