// SPDX-License-Identifier: Apache-2.0
// Where the program finds its cases, its material library and the solver.
// Order for data: the environment variable SOLEMECH_DATA; share/solemech beside an installed program; the
// source tree, named by the file `data-folder` that only a build folder holds. No path is compiled in.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>

namespace solemech::tools
{
/// A part of the installation is not where it should be.
struct MissingPart : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// Folder of the running executable.
std::filesystem::path program_folder();

/// Folder holding `cases` and `materials/library`.
/// @throws MissingPart naming the places that were tried
std::filesystem::path data_folder();

/// `cases` and `materials/library` inside of it.
std::filesystem::path case_folder();
std::filesystem::path library_folder();

/// The executable that calculates.
/// @throws MissingPart
std::filesystem::path solver_program();
} // namespace solemech::tools
