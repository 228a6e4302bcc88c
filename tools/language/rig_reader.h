// SPDX-License-Identifier: Apache-2.0
// A rig from its block, as its description says (described_rigs.h).
#pragma once

#include "solver/case.h"
#include "tools/language/fields.h"
#include "tools/language/sheet_folder.h"

#include <functional>
#include <optional>
#include <string_view>

namespace solemech::tools
{
/// What the reader of a rig may ask for.
struct RigSheet
{
  const materials::Fields &fields;   ///< of its block
  double                   gravity;  ///< [m/s2]
  SheetFolder             &folder;   ///< where files of data are sought
  materials::Problems     &problems; ///< of such files
  /// The rubber that an entry names.
  std::function<materials::Material(const materials::Fields &, const char *)> rubber;
};

/// The rig of the bench block of this name; none when no rig has such a block.
std::optional<solver::Rig> read_rig(std::string_view name, const RigSheet &sheet);

/// Least radius of a round plug for a rig [m]; 0: any.
double least_plug_radius(const solver::Rig &rig);
} // namespace solemech::tools
