// SPDX-License-Identifier: Apache-2.0
#include "tools/program/places.h"

#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <vector>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
bool holds_data(const fs::path &folder)
{
  std::error_code ignored;
  return fs::is_directory(folder / "cases", ignored) &&
         fs::is_directory(folder / "materials" / "library", ignored);
}

/// The line of the file `data-folder` in a build folder; empty when there is none.
fs::path source_folder()
{
  std::ifstream file(program_folder() / "data-folder");
  std::string   line;
  std::getline(file, line);
  return line;
}
} // namespace

fs::path program_folder()
{
  std::error_code error;
  const fs::path  program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::current_path() : program.parent_path();
}

fs::path data_folder()
{
  if (const char *wish = std::getenv("SOLEMECH_DATA"); wish != nullptr && *wish != '\0')
  {
    if (holds_data(wish))
      return wish;
    throw MissingPart(
      fmt::format("SOLEMECH_DATA is set to '{}', but that folder has no `cases` and `materials/library`. "
                  "Correct it, or unset it to use the installed folders.",
                  wish));
  }
  const fs::path              here = program_folder();
  const std::vector<fs::path> places{(here / SOLEMECH_DATA_FROM_BIN).lexically_normal(),
                                     (here / SOLEMECH_DATA_FROM_LIBEXEC).lexically_normal(), source_folder()};
  for (const fs::path &place : places)
    if (!place.empty() && holds_data(place))
      return place;
  throw MissingPart(fmt::format("cannot find the cases and the material library (looked in '{}'). Set "
                                "SOLEMECH_DATA to the folder with `cases` and `materials/library`.",
                                places.front().string()));
}

fs::path case_folder()
{
  return data_folder() / "cases";
}

fs::path library_folder()
{
  return data_folder() / "materials" / "library";
}

fs::path solver_program()
{
  const fs::path here = program_folder();
  for (const fs::path &place : {here / SOLEMECH_LIBEXEC_FROM_BIN / "solemech-solve", here / "solemech-solve"})
    if (fs::exists(place))
      return place.lexically_normal();
  throw MissingPart(fmt::format("cannot find the solver program 'solemech-solve' beside '{}'. "
                                "Build or install solemech again.",
                                here.string()));
}
} // namespace solemech::tools
