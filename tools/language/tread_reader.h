// SPDX-License-Identifier: Apache-2.0
// A whole sole of tread zones: the blocks [tread] and [[zone]].
#pragma once

#include "solver/case.h"
#include "tools/language/fields.h"

namespace solemech::tools
{
/// Force, foot and headings; no zones yet.
solver::Tread read_tread(const materials::Fields &fields);

/// One zone without its own rubber. Slips go to the problems of `fields`: also a name given before, a zone
/// that lies outside of the foot or on one of `before`.
solver::TreadZone read_zone(const materials::Fields &fields, const solver::Tread &before,
                            const solver::SlideRig &rig);

/// What the parts say together: loads on nothing, pressures out of range, entries of a single slide.
void check_tread(const materials::Fields &of_tread, const materials::Fields &of_lug,
                 const materials::Fields &of_slide, const solver::Tread &tread, const solver::SlideRig &rig);
} // namespace solemech::tools
