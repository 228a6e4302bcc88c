// SPDX-License-Identifier: Apache-2.0
#include "tools/language/abrasion_reader.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
constexpr const char *of_sleeve[] = {"sleeve_diameter", "sleeve_width", "speed",
                                     "force",           "seconds",      "found_depth",
                                     "heat_share",      "conductivity", "specific_heat"};
constexpr const char *of_drum[] = {"mass_lost", "cloth_loss"};

void read_sleeve(const materials::Fields &fields, solver::AbrasionRig &rig)
{
  rig.sleeve.sleeve_diameter = fields.value("sleeve_diameter");
  rig.sleeve.sleeve_width = fields.value("sleeve_width");
  rig.sleeve.speed = fields.value("speed");
  rig.sleeve.force = fields.value("force");
  rig.seconds = fields.value("seconds");
  rig.heat_share = fields.value("heat_share");
  rig.conductivity = fields.value("conductivity");
  rig.specific_heat = fields.value("specific_heat");
  rig.tup.diameter = rig.sleeve.sleeve_diameter;
  if (fields.given("found_depth"))
    rig.found_depth = fields.value("found_depth");
}

void read_drum(const materials::Fields &fields, solver::AbrasionRig &rig)
{
  rig.tup.diameter = rig.drum.piece_diameter;
  if (fields.given("mass_lost") != fields.given("cloth_loss"))
    fields.problem(
      fields.given("mass_lost") ? "mass_lost" : "cloth_loss", "stands alone",
      "The standard needs both, mass_lost and cloth_loss: it corrects for the sharpness of the cloth");
  else if (fields.given("mass_lost"))
  {
    rig.mass_lost = fields.value("mass_lost");
    rig.cloth_loss = fields.value("cloth_loss");
  }
}
} // namespace

solver::AbrasionRig read_abrasion(const materials::Fields &fields, const materials::Material &reference)
{
  solver::AbrasionRig rig;
  const bool          drum = fields.text("tool") == "drum";
  rig.tool = drum ? solver::AbrasionTool::drum : solver::AbrasionTool::sleeve;
  const auto refuse = [&](const auto &names) {
    for (const char *name : names)
      if (fields.given(name))
        fields.problem(name, fmt::format("means nothing for a {}", drum ? "drum" : "sleeve"),
                       "Take the line out");
  };
  if (drum)
  {
    refuse(of_sleeve);
    read_drum(fields, rig);
  }
  else
  {
    refuse(of_drum);
    read_sleeve(fields, rig);
  }
  rig.friction = fields.value("friction");
  rig.coefficient = fields.value("coefficient");
  const auto bound = [&](const char *name, const char *fallback, double factor) {
    return fields.word(name) == fallback ? factor * rig.coefficient : fields.value(name);
  };
  rig.lowest = bound("coefficient_lowest", "a third", 1.0 / 3);
  rig.highest = bound("coefficient_highest", "threefold", 3);
  if (rig.lowest > rig.coefficient)
    fields.problem("coefficient_lowest", "is more than the coefficient", "Give less, or take the line out");
  if (rig.highest < rig.coefficient)
    fields.problem("coefficient_highest", "is less than the coefficient", "Give more, or take the line out");
  rig.reference = reference.name;
  if (const auto *rubber = std::get_if<materials::RubberData>(&reference.data))
    rig.reference_modulus = rubber->youngs_modulus();
  return rig;
}
} // namespace solemech::tools
