// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/difference.h"

#include "tools/language/case_text.h"
#include "tools/language/number_text.h"

#include <fmt/format.h>

namespace solemech::tools::rigs
{
void add_row(Details &details, const char *what, const std::string &from, const std::string &to)
{
  if (from != to)
    details.push_back({what, from, to});
}

std::string quantity(double value, const char *unit, double scale)
{
  return fmt::format("{:.6g}{}{}", value * scale, *unit == '\0' ? "" : " ", unit);
}

std::string striker_words(const solver::Tup &tup)
{
  const std::string size = short_length(tup.diameter);
  if (tup.shape == solver::TupShape::flat)
    return "flat " + size + " face";
  if (tup.shape == solver::TupShape::sphere)
    return size + " ball";
  if (tup.shape == solver::TupShape::spherical_ended)
    return size + " rod with a " + short_length(tup.end_radius) + " round end";
  return size;
}

bool same_rig(const solver::Rig &a, const solver::Rig &b)
{
  return same_to_a_run(a, b);
}
} // namespace solemech::tools::rigs
