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

#include <string>
#include <vector>

namespace solemech::tools
{
/// Writes everything but the manifest. Returns sentences for people (e.g. that gnuplot is missing).
/// @throws solver::ResultsError when a number is not finite or a file cannot be written
std::vector<std::string> write_run(RunFolder &folder, const RunRecord &record);

/// The same without summary.txt and report.html, for commands that write their own.
std::vector<std::string> write_run_data(RunFolder &folder, const RunRecord &record);
} // namespace solemech::tools
