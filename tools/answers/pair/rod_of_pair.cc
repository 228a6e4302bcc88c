// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/pair/rod_of_pair.h"

#include "tools/answers/sheet/value_words.h"
#include "tools/language/doubted_case.h"
#include "tools/language/fields.h"
#include "tools/language/sheet.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
using namespace materials;

namespace
{
Unknown *number_of_rod(Sheet &sheet, DoubtedNumber kind)
{
  const auto found = std::ranges::find(sheet.unknowns, kind, &Unknown::kind);
  return found == sheet.unknowns.end() ? nullptr : &*found;
}

/// Within the bands of both, of the logarithm.
bool agree(const settle::Parameter &a, const settle::Parameter &b)
{
  return std::abs(std::log(b.median / a.median)) <= doubts_in_half_band * std::hypot(a.spread, b.spread);
}

/// One number that the sheets give differently: at the mean of both, weighed by their ±. It is known as well
/// as in the better of the two, not better: both may rest on one measurement.
void bring_together(std::vector<Sheet> &parts, DoubtedNumber kind, std::vector<std::string> &notes)
{
  Unknown *numbers[] = {number_of_rod(parts[0], kind), number_of_rod(parts[1], kind)};
  if (!numbers[0] || !numbers[1])
    return;
  const auto heel = numbers[0]->parameter, forefoot = numbers[1]->parameter;
  const bool is_stated = !heel.minor || !forefoot.minor; // minor: with the ± of the instrument
  if (heel.median == forefoot.median || !is_stated || !agree(heel, forefoot))
    return;
  const double at_heel = std::pow(heel.spread, -2), at_forefoot = std::pow(forefoot.spread, -2);
  const double mean = std::exp((at_heel * std::log(heel.median) + at_forefoot * std::log(forefoot.median)) /
                               (at_heel + at_forefoot));
  const double half = mean * std::min(heel.spread, forefoot.spread) * doubts_in_half_band;
  for (std::size_t part = 0; part < parts.size(); ++part)
  {
    numbers[part]->parameter = measured_number(heel.name, {mean, half, ""});
    *doubted_member(parts[part].setup, kind, "") = mean;
  }
  const auto shown = [&](double value) { return value_text(value, numbers[0]->dimension); };
  notes.push_back(fmt::format("{}: {} in the heel sheet and {} in the forefoot sheet are one number within "
                              "their ±. Taken as {} for both.",
                              heel.name, shown(heel.median), shown(forefoot.median),
                              band_text({mean, mean - half, mean + half}, numbers[0]->dimension)));
}

/// What the rods differ in, but for the height; "" when they are one.
std::string differences_of(const solver::Case &heel, solver::Case forefoot)
{
  rigs::fall_of(forefoot)->height = rigs::fall_of(heel)->height;
  std::string text;
  for (const auto &difference : rigs::differences(heel, forefoot))
    for (const auto &detail : difference.details)
      text += fmt::format("{}{} {} at the heel, {} at the forefoot", text.empty() ? "" : "; ", detail.what,
                          detail.from, detail.to);
  return text;
}
} // namespace

void refuse_pair(const Sheet &sheet, const std::vector<std::string> &entries, const std::string &reason,
                 const std::string &cure)
{
  Problems   problems, told_before;
  const auto tree = parse_sheet(sheet.text, sheet.path.string(), told_before);
  problems.add_source(sheet.path.string(), sheet.text);
  for (const auto &entry : entries)
    if (const auto found = tree.at_path(entry))
    {
      problems.add(problem_at(found.node()->source(), entry, reason, cure));
      problems.throw_if_any();
    }
  problems.add({sheet.path.string(), 0, 0, entries.empty() ? "" : entries.front(), reason, cure});
  problems.throw_if_any();
  throw std::logic_error("a problem was noted");
}

void put_under_one_rod(std::vector<Sheet> &parts, std::vector<std::string> &notes)
{
  for (const auto &sheet : parts)
    if (!rigs::fall_of(sheet.setup))
      refuse_pair(sheet, {}, fmt::format("the {} has no drop weight", sheet.part),
                  "A pair is read under one rod: give rig = \"guided-rod-1200\" or a block [drop]");
  for (const auto kind : {DoubtedNumber::mass, DoubtedNumber::guide_loss})
    bring_together(parts, kind, notes);
  const auto &heel = parts[0], &forefoot = parts[1];
  if (const auto differ = differences_of(heel.setup, forefoot.setup); !differ.empty())
    refuse_pair(forefoot, {"drop", "rig"}, "the two sheets have different rods: " + differ,
                fmt::format("Correct the sheet that is wrong: a pair is read under one rod. Mass and guide "
                            "loss may differ within a ± that you give, such as guide_loss = \"3 % +- 1\". If "
                            "you did use two rods, `solemech compare {} {}` fits each sheet on its own",
                            heel.path.string(), forefoot.path.string()));
  const double from = rigs::fall_of(heel.setup)->height, other = rigs::fall_of(forefoot.setup)->height;
  if (other != from)
    notes.push_back(fmt::format(
      "The heel was read from {:.0f} mm, the forefoot from {:.0f} mm. Each is fitted from its own "
      "height; the comparison shows both from {:.0f} mm, as the model brings them there.",
      1e3 * from, 1e3 * other, 1e3 * from));
}
} // namespace solemech::tools
