// SPDX-License-Identifier: Apache-2.0
// The parts of a stack as page, pictures and energy account name them: of every layer its core, the ring
// round it and the film of its air unit, foot side first, then the wall of the plug. What nobody measured is
// named with each.
#pragma once

#include "tools/output/results/run_record.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct Part
{
  std::string              name;          ///< as in the energy account: "core", "core ring", "unit film"
  std::string              material;      ///< for people, with the air of a unit
  std::string              material_name; ///< its short name, "eva-soft"
  std::string              family;        ///< "foam"
  double                   thickness = 0; ///< [m]
  std::vector<std::string> assumed;       ///< one phrase each
  std::string              source;        ///< of the numbers of the material
};

std::vector<Part> parts_of(const Run &run);

/// Number of the part of that name, -1 when there is none.
int part_number(const std::vector<Part> &parts, const std::string &name);

/// True when the thickness of layers is nobody's reading: the stack is invented.
bool layers_are_assumed(const Run &run);

/// Defaults that the run fell back on for this block or layer, without its name in front: "fibre_spacing 3
/// mm".
std::vector<std::string> defaults_of(const Run &run, const std::string &block);
} // namespace solemech::tools
