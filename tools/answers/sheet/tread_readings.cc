// SPDX-License-Identifier: Apache-2.0
// Tread left after known hours. At a steady force and way the depth goes on evenly (J. F. Archard, J. Appl.
// Phys. 24, 1953): the hours left follow from the wear so far, and a later reading shows whether it went on
// as before. A drop says nothing of wear, so nothing is settled on it. Doubts of differences add as squares
// (C. F. Gauss).
#include "tools/answers/sheet/instruments.h"
#include "tools/answers/sheet/reading_kinds.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace solemech::tools
{
using namespace materials;
using D = Dimension;

namespace
{
constexpr double hour = 3600; // [s]

struct Depth
{
  double value = 0, half_band = 0;
};

/// A depth with its doubt or that of callipers; nothing with a problem noted.
std::optional<Depth> depth_of(const Fields &fields, const char *name)
{
  try
  {
    const auto read = parse_doubted(fields.text(name), D::length);
    if (!(read.value > 0))
      throw InvalidQuantity("must be above zero", "Write the depth that is left of the grooves");
    return Depth{read.value, read.half_band > 0
                               ? read.half_band
                               : std::min(instruments::callipers_on_solid, 0.5 * read.value)};
  }
  catch (const InvalidQuantity &error)
  {
    fields.problem(name, error.what(), error.cure);
    return std::nullopt;
  }
}
} // namespace

void read_tread_left(ReadingDesk &desk, const Fields &fields)
{
  if (!fields.given("value") || !fields.given("hours") || !fields.given("new_depth"))
  {
    desk.sheet.kept.push_back(fmt::format("tread left: {}; kept, not used: give hours = \"120 h\" and "
                                          "new_depth = \"3.0 mm\" to predict the hours left",
                                          fields.given("value") ? fields.text("value") : "no value"));
    return;
  }
  const auto   left = depth_of(fields, "value"), fresh = depth_of(fields, "new_depth");
  const double hours = desk.value_of(fields, "hours", D::time) / hour;
  if (!left || !fresh)
    return;
  const double lost = fresh->value - left->value, doubt = std::hypot(fresh->half_band, left->half_band);
  if (lost < 0 && -lost > doubt)
  {
    fields.problem("value", "is more than the depth of the new tread",
                   "Give the depth that is left, not the depth lost");
    return;
  }
  auto told = fmt::format("tread left: {:.1f} of {:.1f} mm after {:.0f} h", 1e3 * left->value,
                          1e3 * fresh->value, hours);
  if (lost <= doubt)
    told +=
      fmt::format("; cannot tell how it wears: {:.2f} mm lost is within the ±{:.2f} mm of the callipers",
                  1e3 * lost, 1e3 * doubt);
  else
  {
    const auto worn = fields.given("worn_at") ? depth_of(fields, "worn_at") : Depth{0.5e-3, 0};
    if (!worn)
      return;
    const double rate = lost / hours, remaining = std::max(0.0, left->value - worn->value) / rate;
    // remaining = (left - worn) hours / (new - left), by the doubts of left and new
    const double by_left = (lost + left->value - worn->value) / (lost * lost) * hours * left->half_band;
    const double by_fresh = (left->value - worn->value) / (lost * lost) * hours * fresh->half_band;
    told += fmt::format(
      "; {:.0f} ±{:.0f} h left until {:.1f} mm, if it goes on wearing as before on the same courts",
      remaining, std::hypot(by_left, by_fresh), 1e3 * worn->value);
  }
  // Beside the first reading with the same new depth: what an even wear said of this one.
  for (const auto &earlier : desk.treads)
    if (hours > earlier.hours && earlier.lost > 0)
    {
      const double ratio = hours / earlier.hours, predicted = fresh->value - ratio * earlier.lost;
      const double band = std::hypot(ratio * earlier.half_band, left->half_band);
      const double miss = std::abs(predicted - left->value);
      told += fmt::format("; by the wear of the first {:.0f} h, {:.1f} ±{:.1f} mm would be left: {}",
                          earlier.hours, 1e3 * predicted, 1e3 * ratio * earlier.half_band,
                          // limits as for every reading: nine cases of ten, ninety-nine of a hundred
                          miss <= band                                 ? "agree"
                          : miss <= 2.576 / doubts_in_half_band * band ? "cannot tell"
                                                                       : "disagree");
      break;
    }
  desk.treads.push_back({hours, lost, doubt});
  desk.sheet.kept.push_back(told + ". A drop does not read wear, so this reading fits nothing");
}
} // namespace solemech::tools
