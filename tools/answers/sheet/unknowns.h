// SPDX-License-Identifier: Apache-2.0
// The numbers of a bench sheet that are not known, and what each does to a case.
//
// An unknown foam is a library foam with three factors: its network (with densification and, as shares of it,
// its branches), the shares of its lossy branches, and its density (with the room that its cells hold). An
// unknown rubber has network and loss. Priors are log-normal: middle and spread of the library's materials of
// the family, never narrower than a quarter; of the loss, the spread about the starting foam by ball rebound,
// never narrower than 0.8 of the logarithm. Everything is applied as a ratio to the middle value.
#pragma once

#include "solver/case.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/language/material_reader.h"
#include "tools/study/settle.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::tools
{
using solver::DoubtedNumber;

struct Unknown
{
  settle::Parameter    parameter; ///< `median` is the value that the middle case has
  DoubtedNumber        kind = DoubtedNumber::thickness;
  std::string          target; ///< material or layer that it belongs to; empty for the rig
  materials::Dimension dimension = materials::Dimension::number; ///< to print it
};

/// A measured number as a parameter: log-normal, its half band nine cases of ten, four spreads each way.
settle::Parameter measured_number(const std::string &name, const Doubted &value);

/// "air unit gauge pressure", and "unit gauge pressure" for a layer that is called so.
std::string unit_pressure_name(const std::string &layer);

/// Changes `setup` from the middle value of `unknown` to `value`.
void set_unknown(solver::Case &setup, const Unknown &unknown, double value);

/// `setup` with all unknowns at these values.
solver::Case case_at(const solver::Case &setup, const std::vector<Unknown> &unknowns,
                     const std::vector<double> &values);

/// @param scale  of a hardness that was read, so one that there is
const materials::Gauge &gauge_named(const std::string &scale);

/// Hardness of a layer as a gauge reads it on a thick pad (materials/pad_hardness.h); 0: there is no such
/// layer.
std::function<double(const solver::Case &)> pad_hardness(const materials::Gauge &gauge,
                                                         const std::string      &layer);

/// The library material that an unknown foam or rubber starts from: nearest to a modulus, as a gauge feels it
/// on a pad, and a density, in spreads of the library; NaN: not known. `family` is "foam" or "rubber".
const materials::Material *starting_material(const materials::MaterialSource &library,
                                             const std::string &family, double youngs_modulus,
                                             double density);

/// At most `n` of the library's materials of a family, those nearest to `wanted` in slow stiffness and
/// density, both by ratio; nearest first.
std::vector<materials::Material> nearest_materials(const std::vector<materials::Material> &library,
                                                   const std::string                      &family,
                                                   const materials::Material &wanted, std::size_t n);

/// Unknown factors of a material `name` that starts from `start`, called after `layer` for people.
std::vector<Unknown> material_unknowns(const materials::MaterialSource &library,
                                       const materials::Material &start, const std::string &name,
                                       const std::string &layer);
} // namespace solemech::tools
