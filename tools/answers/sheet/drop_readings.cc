// SPDX-License-Identifier: Apache-2.0
// Readings of the drop weight: rebound, force, deceleration, compression, contact time.
#include "solver/results/catalogue.h"
#include "tools/answers/sheet/instruments.h"
#include "tools/answers/sheet/plausible.h"
#include "tools/answers/sheet/reading_kinds.h"
#include "tools/language/reading_measure.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

namespace solemech::tools
{
using namespace materials;
using D = Dimension;

namespace
{
struct DropKind
{
  const solver::ReadingKind &reading;
  double                     instrument; ///< half band of what is read by hand or sensor
  bool                       relative;
  const char                *instrument_name;
};
using solver::catalogue;
constexpr DropKind drop_kinds[] = {
  {catalogue.rebound_height, instruments::height_by_eye, false, "a height read by eye on a rule"},
  {catalogue.peak_force, instruments::force_sensor, true, "a force sensor"},
  {catalogue.peak_deceleration, instruments::acceleration_sensor, true, "an acceleration sensor"},
  {catalogue.greatest_compression, instruments::compression_by_camera, false, "a compression read by camera"},
  {catalogue.contact_time, instruments::contact_time, false, "a contact time"},
};
} // namespace

void read_drop(ReadingDesk &desk, const Fields &fields)
{
  const auto kind = fields.text("kind");
  for (const auto &known : drop_kinds)
  {
    if (kind != known.reading.on_sheet)
      continue;
    auto        dimension = dimension_of(known.reading);
    auto        instrument = known.instrument;
    auto        name = std::string(known.instrument_name);
    std::string reading = known.reading;
    const auto  first = fields.given("values") && !fields.texts("values").empty()
                          ? fields.texts("values").front()
                        : fields.given("value") ? fields.text("value")
                                                : std::string();
    const auto *drop = desk.has_case ? rigs::fall_of(desk.sheet.setup) : nullptr;
    if (desk.has_case && !drop)
    {
      fields.problem("kind", fmt::format("a {} needs a drop weight, and this sheet has another rig", kind),
                     "Give rig = \"guided-rod-1200\" or a block [drop]");
      return;
    }
    const double height = fields.given("height") ? desk.value_of(fields, "height", D::length)
                          : drop                 ? drop->height
                                                 : 0;
    if (kind == "rebound" && fields.text("by") == "camera")
      instrument = instruments::height_by_camera, name = "a height read by camera";
    if (kind == "rebound" && split_doubted(first).value.ends_with('%'))
    {
      dimension = D::share;
      reading = catalogue.rebound_by_height;
      instrument = height > 0 ? instrument / height : 0.015;
    }
    const std::string unit(dimension == D::number ? known.reading.shown.unit : "");
    const auto        found = desk.measured(fields, dimension, {instrument, known.relative, name, unit});
    if (!found.usable)
      return;
    if (const auto asked = asked_of_reading(kind, reading, found.value, dimension, unit); !asked.empty())
      desk.sheet.asked.push_back(asked);
    if (kind == "rebound" && desk.has_case && found.value >= (dimension == D::share ? 1 : height))
    {
      fields.problem(
        fields.given("values") ? "values" : "value",
        fmt::format("the weight cannot rebound to its full drop height ({:.0f} mm)", 1e3 * height),
        "Give the rise above the level of first touch, not the drop that was lost");
      return;
    }
    const bool own_bench = fields.given("height") || fields.given("mass");
    Probe      probe{kind, dimension, unit, desk.drop_bench(fields), reading, "", {}};
    if (own_bench)
      probe.name +=
        fmt::format(", {}{}{}", fields.text("height"),
                    fields.given("height") && fields.given("mass") ? ", " : "", fields.text("mass"));
    desk.add(std::move(probe), found.value, found.half_band, fields.flag("hold_out"));
  }
}
} // namespace solemech::tools
