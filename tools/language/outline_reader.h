// SPDX-License-Identifier: Apache-2.0
// The outline of a sole from its block: half widths, or a trace from a file beside the sole file, turned so
// that the toe points along x and the lateral side lies at growing y.
#pragma once

#include "geometry/sole/sole_shape.h"
#include "tools/language/fields.h"
#include "tools/language/sheet_folder.h"

namespace solemech::tools
{
/// @param fields  of the block [outline]
/// @return whether there is an outline to look at; what lacks is in `problems`
bool read_outline(const materials::Fields &fields, SheetFolder &folder, geometry::OutlineShape &outline,
                  materials::Problems &problems);
} // namespace solemech::tools
