// SPDX-License-Identifier: Apache-2.0
// The deforming section for the page: drawn nodes, quads and outlines once, positions and fields frame by
// frame in the coding of frame_coding.h. Positions are good to a few micrometres, fields to a thousandth of
// their colour scale.
#pragma once

#include "tools/output/report/json.h"
#include "tools/output/results/run_record.h"

namespace solemech::tools::report
{
/// The type Frames of src/data.ts; null when the run has no pictures.
Json frames_json(const Run &run);
} // namespace solemech::tools::report
