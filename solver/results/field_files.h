// SPDX-License-Identifier: Apache-2.0
// The deformed stack in time for ParaView and other readers of the VTK XML formats: one VTU file a snapshot
// and one PVD file that lists them with their times. Each nine-node cell becomes 2 x 2 linear cells on its
// own nodes, drawn at their current place. Nothing in the files depends on the date, the user or the folder.
#pragma once

#include "solver/results/result.h"
#include "solver/results/result_check.h"

#include <filesystem>
#include <string>

namespace solemech::solver
{
/// Writes NAME.pvd, NAME_0000.vtu, ..., NAME_parts.csv (part number, part name) into an existing folder.
/// Point data: part [-], displacement [m], vertical_stress, mean_stress, shear_stress [Pa], vertical_stretch
/// [-], energy_density, dissipated_density [J/m3]. A picture without snapshots writes nothing.
/// @throws ResultsError when a file cannot be written
void write_field_files(const std::filesystem::path &folder, const std::string &name, const Picture &picture);

/// Writes view.py, a ParaView script that opens every PVD file lying beside it.
/// @throws ResultsError when the file cannot be written
void write_view_script(const std::filesystem::path &folder);
} // namespace solemech::solver
