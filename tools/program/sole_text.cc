// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sole_text.h"

#include "tools/language/number_text.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace solemech::tools
{
namespace
{
std::string length_of(double length)
{
  return length_text(length, Lengths::millimetre);
}

std::string thickness_of(const SolePart &part)
{
  if (part.least_thickness == part.greatest_thickness)
    return length_of(part.least_thickness);
  return fmt::format("{} to {}", length_text(part.least_thickness, Lengths::millimetre, false),
                     length_of(part.greatest_thickness));
}
} // namespace

std::string sole_text(const SoleFacts &facts, const std::vector<std::string> &assumed)
{
  TextTable table({Align::left, Align::left});
  table.add_row({"length", length_of(facts.length)});
  table.add_row({"width", fmt::format("heel {}, waist {}, ball {}", length_of(facts.width_heel),
                                      length_of(facts.width_waist), length_of(facts.width_ball))});
  table.add_row({"height", fmt::format("heel {}, ball {}: drop {}", length_of(facts.height_heel),
                                       length_of(facts.height_ball), length_of(facts.drop))});
  table.add_row({"gap under", fmt::format("toe tip {}, heel {}", length_of(facts.toe_spring),
                                          length_of(facts.heel_bevel))});
  table.add_row({"mass", fmt::format("about {:.0f} g, without films and glue", 1e3 * facts.mass)});
  if (!assumed.empty())
    table.add_row({"assumed", fmt::format("{}", fmt::join(assumed, ", "))});
  TextTable layers({Align::left, Align::left, Align::right, Align::right});
  for (const auto &part : facts.parts)
    layers.add_row({part.layer, part.material, thickness_of(part), fmt::format("{:.0f} g", 1e3 * part.mass)});
  return fmt::format("{}{}\n{}{}", facts.title, facts.invented ? " (invented)" : "",
                     table.text(2, page_width()), layers.text(2));
}
} // namespace solemech::tools
