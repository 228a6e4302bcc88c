// SPDX-License-Identifier: Apache-2.0
#include "tools/language/use_band_reader.h"

#include "tools/language/described_materials.h"
#include "tools/language/material_reader.h"
#include "tools/language/member_reader.h"

#include <fmt/format.h>

namespace solemech::materials
{
namespace
{
UseBand read_band(const Fields &fields)
{
  UseBand band;
  band.kind = fields.text("kind");
  band.use = fields.text("use");
  band.source = fields.text("source");
  tools::read_members(fields, band);
  const auto in_order = [&](double from, double to, const char *name, const char *other) {
    if (from > to)
      fields.problem(name, fmt::format("is above {}", other), "Swap the two");
  };
  in_order(band.stiffness_from, band.stiffness_to, "stiffness_from", "stiffness_to");
  in_order(band.return_from, band.return_to, "return_from", "return_to");
  return band;
}
} // namespace

std::vector<UseBand> read_use_bands(const Fields &material, Problems &problems)
{
  std::vector<UseBand> bands;
  for (const auto *block : material.blocks("after_use"))
    bands.push_back(read_band(
      Fields(*block, "material.after_use", material.title("after_use"), material_entries(), problems)));
  return bands;
}
} // namespace solemech::materials
