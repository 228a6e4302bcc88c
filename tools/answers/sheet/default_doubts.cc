// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/default_doubts.h"

#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/instruments.h"
#include "tools/answers/sheet/value_words.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using D = materials::Dimension;

/// Of a value: less than this shows on no reading of a bench, whose best ones are good to some per cent.
constexpr double too_small_to_show = 0.003;
/// Of a value: no instrument is taken to be worse, however thin the layer.
constexpr double most_of_value = 0.3;

class InstrumentDoubts
{
public:
  explicit InstrumentDoubts(Sheet &sheet) : sheet_(sheet) {}

  void add()
  {
    for (const auto &layer : sheet_.setup.layers)
    {
      const bool solid = layer.material.family != "foam";
      number(DoubtedNumber::thickness, layer.name, D::length, layer.name + " thickness", layer.thickness,
             layer.unit ? instruments::beside_a_unit
             : solid    ? instruments::callipers_on_solid
                        : instruments::callipers_on_foam,
             layer.unit ? "rule beside a unit"
             : solid    ? "callipers on rubber or plate"
                        : "callipers on foam");
      if (layer.unit && layer.unit->gauge_pressure > 0)
        number(DoubtedNumber::gauge_pressure, layer.name, D::pressure, unit_pressure_name(layer.name),
               layer.unit->gauge_pressure, instruments::unit_pressure * layer.unit->gauge_pressure,
               "a unit's pressure");
      if (layer.core_diameter > 0)
        exact_.push_back(layer.name + " core diameter");
      if (layer.unit)
        exact_.push_back(layer.name + " unit diameter and film");
    }
    if (const auto *drop = rigs::fall_of(sheet_.setup))
    {
      number(DoubtedNumber::height, "", D::length, "drop height", drop->height, instruments::drop_height,
             "rule and stop");
      number(DoubtedNumber::mass, "", D::mass, "drop mass", drop->mass, instruments::drop_mass,
             "kitchen scales");
      if (drop->guide_loss > 0)
        number(DoubtedNumber::guide_loss, "", D::share, "drop guide loss", drop->guide_loss,
               instruments::guide_loss, "a reference block");
      else
        exact_.push_back("drop guide loss, none given");
    }
    if (sheet_.setup.plug.radius > 0)
      exact_.push_back("plug radius");
    // One sentence for all of them: each alone they would bury what the readings say.
    std::string groups;
    for (const auto &group : groups_)
      groups += fmt::format("{}{} ±{} ({})", groups.empty() ? "" : "; ", group.instrument, group.half,
                            fmt::join(group.names, ", "));
    if (!groups.empty())
      sheet_.assumptions.push_back("no ± given, that of the instrument assumed: " + groups);
    if (!small_.empty())
      sheet_.assumptions.push_back(fmt::format(
        "no ± given, and that of the instrument would make no difference: {}", fmt::join(small_, ", ")));
    if (!exact_.empty())
      sheet_.assumptions.push_back(
        fmt::format("exact, so the bands do not include its uncertainty: {}", fmt::join(exact_, ", ")));
  }

private:
  struct Group
  {
    std::string              instrument, half;
    std::vector<std::string> names;
  };

  void number(DoubtedNumber kind, const std::string &target, D dimension, const std::string &name,
              double value, double half_band, const char *instrument)
  {
    const bool doubted = std::any_of(sheet_.unknowns.begin(), sheet_.unknowns.end(), [&](const Unknown &one) {
      return one.kind == kind && one.target == target;
    });
    if (doubted || !(value > 0))
      return;
    if (half_band < too_small_to_show * value)
    {
      small_.push_back(fmt::format("{} (±{}, {})", name, small_text(half_band, dimension), instrument));
      return;
    }
    half_band = std::min(half_band, most_of_value * value);
    Unknown unknown{measured_number(name, {value, half_band, ""}), kind, target, dimension};
    unknown.parameter.minor = true;
    sheet_.unknowns.push_back(std::move(unknown));
    const auto half = small_text(half_band, dimension);
    const auto same = std::find_if(groups_.begin(), groups_.end(), [&](const Group &one) {
      return one.instrument == instrument && one.half == half;
    });
    if (same == groups_.end())
      groups_.push_back({instrument, half, {name}});
    else
      same->names.push_back(name);
  }

  static std::string small_text(double half_band, D dimension)
  {
    return dimension == D::mass     ? fmt::format("{:.0f} g", 1e3 * half_band)
           : dimension == D::length ? fmt::format("{:.2g} mm", 1e3 * half_band)
                                    : value_text(half_band, dimension);
  }

  Sheet                   &sheet_;
  std::vector<Group>       groups_;
  std::vector<std::string> small_, exact_;
};
} // namespace

MissingValue missing_thickness(const std::string &family, bool holds_unit)
{
  if (holds_unit)
    return {"10 mm +- 4", "a layer with a unit"};
  if (family == "foam")
    return {"12 mm +- 6", "a foam layer"};
  if (family == "rubber")
    return {"2.5 mm +- 1", "an outsole"};
  return {"1.2 mm +- 0.4", "a plate"};
}

MissingValue missing_gauge_pressure()
{
  return {"120 kPa +- 80", "a unit under pressure"};
}

void add_instrument_doubts(Sheet &sheet)
{
  InstrumentDoubts(sheet).add();
}
} // namespace solemech::tools
