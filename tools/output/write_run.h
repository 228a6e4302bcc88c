// SPDX-License-Identifier: Apache-2.0
// Fills the folder of a run:
//   report.html        what happened and why, for people: one file, opens in any browser
//   summary.txt        what the terminal shows
//   pictures/          SVG and PNG
//   inputs/            copies of the files that the case names, by number; manifest.json says which is which
//   data/              results.h5 (the record), case.toml, resolved.txt, pictures.gp;
//                      curves.csv, ledger.csv, readings.csv (in a folder per run when there are several)
//   paraview/          stack.pvd with its .vtu files (one series per run), view.py
// manifest.json is written by RunFolder::commit.
#pragma once

#include "tools/output/results/run_folder.h"
#include "tools/output/results/run_record.h"

#include <functional>
#include <string>

namespace solemech::tools
{
/// Writes everything but the manifest. Returns a sentence for people (e.g. that gnuplot is missing), or "".
/// @throws solver::ResultsError when a number is not finite or a file cannot be written
std::string write_run(RunFolder &folder, const RunRecord &record);

/// The same for commands whose summary.txt and report.html are their own.
/// @param write_pages  writes them, while the pictures are drawn
std::string write_run(RunFolder &folder, const RunRecord &record, const std::function<void()> &write_pages);
} // namespace solemech::tools
