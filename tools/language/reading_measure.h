// SPDX-License-Identifier: Apache-2.0
// A number that a lesson takes from its runs, as a person writes it:
//   peak_force:dead                    a reading of one run, named by the ending of its label
//   peak_force:dead / peak_force:full  their ratio
//   peak_force:dead / peak_force:full - 1   how much more or less, as a share
//   rebound_by_height:hot - rebound_by_height:cold   their difference
// Of a file with a single run the readings stand without a label. Signs and values are surrounded by blanks,
// because labels may hold a dash.
#pragma once

#include "solver/results/reading_kind.h"
#include "solver/results/result.h"
#include "tools/language/quantity.h"

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
/// One reading of one run. Besides the readings that [[expect]] knows: of an air unit
/// fibre_tension, threshold_load and heat_time; lost_in.<layer>, the share of the energy that a layer turns
/// into heat.
struct ReadingOf
{
  std::string          name;
  std::size_t          run = 0;  ///< number of the case in its file
  std::string          run_name; ///< ending of its label, "" when it is the only one
  materials::Dimension dimension = materials::Dimension::number;
};

enum class MeasureKind { single, difference, ratio, change };

struct ReadingMeasure
{
  MeasureKind          kind = MeasureKind::single;
  ReadingOf            first, second;                            ///< `second` only when there are two
  materials::Dimension dimension = materials::Dimension::number; ///< of the number itself
  std::string          written;
};

/// What is wrong with a measure, and the cure.
struct InvalidMeasure : std::runtime_error
{
  InvalidMeasure(const std::string &reason, std::string cure_text)
    : std::runtime_error(reason), cure(std::move(cure_text))
  {
  }
  std::string cure;
};

using solver::RigKind; // each gives readings of its own

/// One run as a measure may name it.
struct NamedRun
{
  std::string              ending; ///< of its label, "" when it is the only one
  RigKind                  rig = RigKind::drop;
  bool                     has_unit = false;
  std::vector<std::string> layers;
};

/// Reads a measure.
/// @throws InvalidMeasure for an unknown reading, run or layer, a reading that the rig of the run does not
/// give, and for two readings of different kinds
ReadingMeasure read_measure(std::string_view text, const std::vector<NamedRun> &runs);

/// Names of all readings that measures know, "lost_in.<layer>" left out.
std::vector<std::string> measured_readings();

/// A number of an air unit, from its inflation.
struct UnitFact
{
  std::string_view     name;
  materials::Dimension dimension;
  double solver::ChamberFacts::*value;
};

/// nullptr when there is none of this name.
const UnitFact *find_unit_fact(std::string_view name);

/// Before the name of a layer: the share of the energy that it turns into heat.
inline constexpr std::string_view lost_in = "lost_in.";

/// Kind of quantity of a reading, by its unit and the way it is shown.
materials::Dimension dimension_of(const solver::ReadingKind &kind);

/// Kind of quantity of a measured reading; `Dimension::text` when there is none of this name.
materials::Dimension reading_dimension(std::string_view name);

/// True when the rig gives the reading: a press has no rebound, a drop no loop energy.
bool rig_gives(std::string_view reading, RigKind rig);
} // namespace solemech::tools
