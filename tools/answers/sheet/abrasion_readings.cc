// SPDX-License-Identifier: Apache-2.0
// Depth that a sleeve on a rotary tool ground into the rubber of a layer. The volume taken goes with force
// and way (J. F. Archard, J. Appl. Phys. 24, 1953), that of one rubber over another on the same abrasive with
// the inverse of stiffness (Ratner, Lancaster; from memory), and a sleeve at rest grinds a groove of its own
// roundness (materials/abrasion_bench.h). Force and abrasive are hardly known; a known rubber ground beside
// it takes both out.
#include "materials/abrasion_bench.h"
#include "tools/answers/sheet/instruments.h"
#include "tools/answers/sheet/reading_kinds.h"
#include "tools/language/nearest_name.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
using namespace materials;
using D = Dimension;

namespace
{
/// Of a rubber of the usual reference on a fine sleeve [1/Pa]; invented, no source, good to a factor of
/// three: the same as that of an abrasion bench.
constexpr double      usual_loss = 0.375e-9, usual_factor = 3;
constexpr const char *usual_reference = "rubber-64a";
constexpr double      endless = 1; // [m] of rubber, so that a prediction does not end at the layer's back

double modulus_of(const Material &material)
{
  const auto *rubber = std::get_if<RubberData>(&material.data);
  return rubber ? rubber->youngs_modulus() : 0;
}

/// What is known of sleeve, hand and abrasive.
struct Grinding
{
  RotaryTool tool;
  double     seconds = 0;
  double     loss = 0;              ///< of the reference rubber on this abrasive [1/Pa]
  double     reference_modulus = 0; ///< [Pa]
  double     log_half_band = 0;     ///< of `loss`

  double depth(double modulus, double factor = 1) const
  {
    const auto wear = Abrasive::from_known({.youngs_modulus = reference_modulus}, AbrasiveWear(factor * loss))
                        .wear_of({.youngs_modulus = modulus});
    return tool.depth_after(seconds, {{endless, wear}}).depth;
  }
};

double value_or(ReadingDesk &desk, const Fields &fields, const char *name, D dimension, double otherwise)
{
  return fields.given(name) ? desk.value_of(fields, name, dimension) : otherwise;
}

/// The reference rubber by name, or nullptr with a problem noted.
const Material *reference_of(ReadingDesk &desk, const Fields &fields)
{
  const auto  name = fields.given("reference") ? fields.text("reference") : std::string(usual_reference);
  const auto *found = desk.library.find(name);
  if (found && modulus_of(*found) > 0)
    return found;
  const auto near = nearest_name(name, desk.library.names);
  fields.problem("reference", fmt::format("\"{}\" is not a rubber of the library", name),
                 near.empty() || near == name ? "`solemech materials` lists them"
                                              : fmt::format("Did you mean \"{}\"?", near));
  return nullptr;
}

/// A depth beside which the reference rubber was ground for as long tells what the abrasive takes.
void calibrate(const Fields &fields, Grinding &grinding)
{
  if (!fields.given("reference_depth"))
  {
    grinding.log_half_band = std::log(usual_factor);
    return;
  }
  try
  {
    auto known = parse_doubted(fields.text("reference_depth"), D::length);
    if (!(known.value > 0))
      throw InvalidQuantity("must be above zero", "Write the depth that you measured");
    if (known.half_band == 0)
      known.half_band = std::min(instruments::ground_depth, 0.5 * known.value);
    grinding.loss = grinding.tool.wear_from(known.value, grinding.seconds).value();
    const auto taken = [&](double depth) { return grinding.tool.wear_from(depth, grinding.seconds).value(); };
    grinding.log_half_band =
      0.5 * std::log(taken(known.value + known.half_band) / taken(known.value - known.half_band));
  }
  catch (const InvalidQuantity &error)
  {
    fields.problem("reference_depth", error.what(), error.cure);
  }
}
} // namespace

void read_abrasion(ReadingDesk &desk, const Fields &fields)
{
  const bool through = fields.flag("wore_through");
  if (!fields.given("seconds"))
  {
    desk.sheet.kept.push_back(fmt::format("abrasion: {}{}; kept, not used: without the time that the sleeve "
                                          "was held, such as seconds = \"6 s\", no depth can be predicted",
                                          through ? "at least " : "",
                                          fields.given("value") ? fields.text("value") : "no depth"));
    return;
  }
  auto found = desk.measured(fields, D::length, {instruments::ground_depth, false, "callipers in a groove"});
  const auto *reference = reference_of(desk, fields);
  Grinding    grinding;
  grinding.seconds = desk.value_of(fields, "seconds", D::time);
  grinding.tool.sleeve_diameter =
    value_or(desk, fields, "diameter", D::length, grinding.tool.sleeve_diameter);
  grinding.tool.speed = value_or(desk, fields, "speed", D::turning, 8000.0 / 60);
  grinding.tool.force = value_or(desk, fields, "force", D::force, 2);
  grinding.loss = usual_loss;
  if (!found.usable || !reference || !desk.has_case)
    return;
  grinding.reference_modulus = modulus_of(*reference);
  calibrate(fields, grinding);

  const auto  name = fields.given("layer") ? fields.text("layer") : desk.sheet.setup.layers.back().name;
  const auto &node = fields.given("layer") ? *fields.table().get("layer") : *fields.table().get("kind");
  const auto *layer = desk.find_layer(name, node, "reading.layer");
  if (!layer)
    return;
  if (modulus_of(layer->material) == 0)
  {
    desk.sheet.kept.push_back(fmt::format("abrasion of {}: kept, not used: it is not a rubber, and for other "
                                          "materials the loss does not follow from stiffness",
                                          name));
    return;
  }
  const double modulus = modulus_of(layer->material);
  Probe        probe{fmt::format("abrasion of {}", name),
              D::length,
              "",
              0,
              "",
              "",
              [grinding, name](const solver::Case &setup) {
                for (const auto &one : setup.layers)
                  if (one.name == name)
                    return grinding.depth(modulus_of(one.material));
                return 0.0;
              }};
  // The doubt of the abrasive is told as one of the reading: both are compared by ratio.
  const double factor = std::exp(grinding.log_half_band);
  const double spread = 0.5 * std::log(grinding.depth(modulus, factor) / grinding.depth(modulus, 1 / factor));
  desk.add(std::move(probe), found.value, found.value * std::hypot(found.half_band / found.value, spread),
           fields.flag("hold_out"), name);
  auto &observation = desk.sheet.readings.back().observation;
  observation.by_ratio = true;
  if (through)
    observation.meaning = settle::Meaning::at_least;
  const double taken = grinding.tool.wear_from(found.value, grinding.seconds).value();
  desk.sheet.assumptions.push_back(fmt::format(
    "abrasion of {}: by your depth the sleeve takes off {} {:.2f} times as much as off {}; by stiffness it "
    "would be {:.2f} times. What it takes off {} is {}. A sleeve ranks rubbers on that sleeve and says "
    "nothing about a court",
    name, through ? "at least" : "about", taken / grinding.loss, reference->name,
    grinding.reference_modulus / modulus, reference->name,
    fields.given("reference_depth") ? "as you found it" : "a typical value, good to a factor of three"));
}
} // namespace solemech::tools
