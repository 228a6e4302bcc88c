// SPDX-License-Identifier: Apache-2.0
// The pictures of a record as pieces of one gnuplot script. Each function returns "" when the runs lack
// what it would show.
#pragma once

#include "tools/output/picture/looks.h"

#include <string>

namespace solemech::tools
{
/// Line at the foot of every picture: that it shows a model, and whether the stacks are invented.
std::string source_line(const std::vector<Run> &runs);

/// Force on the drop weight or press against time, peaks marked. Needs the curve "force".
/// Runs of a series share the look of their group.
std::string force_time_chart(const std::vector<Run> &runs, const Series *series);

/// Force against compression; the area inside is the energy lost. Needs the curves "force" and
/// "compression" (or "displacement").
std::string loop_chart(const std::vector<Run> &runs, const Series *series);

/// Energy by part: bars for a few runs, one stacked bar a run for many.
std::string energy_chart(const std::vector<Run> &runs);

/// Rebound (or return), peak force and compression against what the series varies.
std::string series_chart(const std::vector<Run> &runs, const Series &series);

/// Pressure along the face of a sliding lug at the end of each run. Needs faces.
std::string face_pressure_chart(const std::vector<Run> &runs);

/// The face of a lug, fresh and on its way, to scale. Needs the faces of a single wear.
std::string worn_face_chart(const std::vector<Run> &runs);

/// Grip of whole soles against the heading of the slide, ahead up. Needs treads.
std::string grip_map_chart(const std::vector<Run> &runs);

/// Cross-section of one run at rest and at its greatest compression.
std::string section_chart(const Run &run, const std::string &name, const Looks &looks);
} // namespace solemech::tools
