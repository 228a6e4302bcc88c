// SPDX-License-Identifier: Apache-2.0
// Draws the pictures of a run with gnuplot, an optional program: one process for all of them. Without it the
// script alone is kept, and the reader is told.
#pragma once

#include "tools/output/results/run_record.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Full path of gnuplot on PATH; empty when it is not installed.
std::filesystem::path find_gnuplot();

/// The gnuplot script of all pictures; it writes pictures/NAME.svg and pictures/NAME.png below the folder in
/// which it is run. Names: force-time, force-compression, energy, series, section-LABEL.
std::string picture_script(const std::vector<Run> &runs, const Series *series);

/// Writes a gnuplot script as data/NAME below `folder` and runs it there; an empty one is left out. Answers
/// and throws as draw_pictures.
std::string draw_script(const std::filesystem::path &folder, const std::string &name,
                        const std::string &script);

/// Writes data/pictures.gp below `folder` and runs it there.
/// Returns "" or one sentence for people saying why there are no pictures. Never throws because of gnuplot.
/// @throws solver::ResultsError when the script cannot be written
std::string draw_pictures(const std::filesystem::path &folder, const std::vector<Run> &runs,
                          const Series *series);
} // namespace solemech::tools
