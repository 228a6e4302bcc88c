// SPDX-License-Identifier: Apache-2.0
#include "tools/language/abrasion_reader.h"

#include "tools/language/described_rigs.h"
#include "tools/language/member_reader.h"

#include <fmt/format.h>

namespace solemech::tools
{
solver::AbrasionRig read_abrasion(const materials::Fields &fields, const materials::Material &reference)
{
  solver::AbrasionRig rig;
  const bool          drum = fields.text("tool") == "drum";
  rig.tool = drum ? solver::AbrasionTool::drum : solver::AbrasionTool::sleeve;
  for_each_idle_entry(rig, [&](std::string_view name) {
    if (fields.given(name))
      fields.problem(name, fmt::format("has no meaning for a {}", drum ? "drum" : "sleeve"),
                     "Remove the line");
  });
  read_members(fields, rig);
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
  rig.reference = reference.name;
  if (const auto *rubber = std::get_if<materials::RubberData>(&reference.data))
    rig.reference_modulus = rubber->youngs_modulus();
  return rig;
}
} // namespace solemech::tools
