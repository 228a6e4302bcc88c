// SPDX-License-Identifier: Apache-2.0
// Values as people write them on a bench sheet: a number and a unit in one string ("12 mm", "140 kPa"),
// turned into SI. Units are case-sensitive, as the SI brochure (BIPM, 9th edition) has them; customary units
// by NIST Special Publication 811, appendix B. A hardness is a reading on a named scale, never converted
// here.
#pragma once

#include "tools/language/nearest_name.h"

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// What kind of thing an entry holds. The first group has units, the others are spelled as they are.
enum class Dimension {
  length,
  volume,
  mass,
  time,
  temperature,
  force,
  energy,
  moment,
  pressure,
  density,
  stiffness,
  stiffness_per_area,
  damping,
  acceleration,
  speed,
  molar_energy,
  per_kelvin,
  conductivity,
  specific_heat,
  wear,
  turning,
  angle,
  share,    ///< "3 %" or 0.03
  number,   ///< plain number
  count,    ///< whole number
  hardness, ///< "60 ShoreA"
  text,
  choice,
  flag,
  file,
  list,
  block,
  blocks
};

/// A value that cannot be taken as it stands: `what()` is the reason, `cure` what to write instead.
class InvalidQuantity : public std::runtime_error
{
public:
  InvalidQuantity(const std::string &reason, std::string cure_text)
    : std::runtime_error(reason), cure(std::move(cure_text))
  {
  }
  std::string cure;
};

/// A gauge reading with its scale, as printed; scales are those of ISO 48-4 (Shore) and JIS K 7312 (Asker C).
struct GaugeReading
{
  double      value = 0; ///< [points of the scale], 0..100
  std::string scale;     ///< "ShoreA", "ShoreD", "ShoreOO", "AskerC"
};

/// One unit: SI value = factor * written value + offset.
struct Unit
{
  std::string_view name;
  Dimension        dimension;
  double           factor;
  double           offset = 0;
};

/// Every unit known, in the order in which they are offered to people.
const std::vector<Unit> &units();

/// Number and unit to SI. Throws InvalidQuantity (missing, unknown or unfit unit, decimal comma, not finite).
double parse_quantity(std::string_view text, Dimension dimension);

/// Gauge reading such as "60 ShoreA", "60 Shore A", "42 AskerC". Throws InvalidQuantity.
GaugeReading parse_hardness(std::string_view text);

/// SI value printed in a unit of the dimension, or in the one people use for it: 0.012 -> "12 mm".
std::string quantity_text(double si_value, Dimension dimension, std::string_view unit = {});

/// The unit that a quantity is written in, as units() spells it; empty when it has none that fits.
std::string_view written_unit(std::string_view text, Dimension dimension);

/// "length", "pressure", ... for messages.
std::string_view dimension_name(Dimension dimension);

/// An example of how such a value is written, e.g. "12 mm".
std::string_view dimension_example(Dimension dimension);

/// Units accepted for the dimension, "mm, cm, m, in".
std::string unit_list(Dimension dimension);
} // namespace solemech::materials
