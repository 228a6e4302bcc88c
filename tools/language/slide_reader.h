// SPDX-License-Identifier: Apache-2.0
// A slide of a tread bar: the blocks [lug] and [slide]. Courts are called by name.
#pragma once

#include "materials/court.h"
#include "solver/case.h"
#include "tools/language/fields.h"

#include <optional>
#include <vector>

namespace solemech::tools
{
/// Shape, neighbours and heat of the bar into `rig`; the density of its heat is that of its material and
/// stays open. A herringbone's arm angle becomes the heading. Slips go to the problems of `fields`: also a
/// bar too slender to stand, and bars whose roots overlap.
void read_lug(const materials::Fields &fields, solver::SlideRig &rig);

/// Rubber of the hardness given with a lug: modulus by Gent's relation on Shore A (20 to 80), else of the
/// endless block on which the gauge reads it (materials/hardness.h). Nothing when no hardness is given, or
/// after a slip.
std::optional<materials::Material> rubber_of_hardness(const materials::Fields &lug);

/// Court, load and way into `rig`; after read_lug.
void read_slide(const materials::Fields &fields, const std::vector<materials::Court> &courts,
                solver::SlideRig &rig);

/// Wear of the bar into `rig`, from what is known of the reference rubber on its court; after read_lug.
void read_wear(const materials::Fields &fields, const materials::Material &reference, solver::SlideRig &rig);
} // namespace solemech::tools
