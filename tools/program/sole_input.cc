// SPDX-License-Identifier: Apache-2.0
#include "tools/program/sole_input.h"

#include "tools/language/library.h"
#include "tools/language/sheet.h"
#include "tools/program/places.h"

#include <system_error>

namespace solemech::tools
{
namespace fs = std::filesystem;

SoleFile sole_named(const std::string &name)
{
  const auto          library = materials::Library::load(library_folder());
  const ReadOptions   options{{}, {case_folder()}, library.source()};
  const auto          path = find_sole(name, options.case_roots);
  materials::Problems problems;
  const auto          text = materials::read_sheet_text(path, problems);
  problems.throw_if_any();
  return read_sole_text(text, path.string(), options);
}

bool names_sole(const std::string &name)
{
  std::error_code error;
  const fs::path  path =
    fs::path(name).extension() == ".toml" ? fs::path(name) : case_folder() / "soles" / (name + ".toml");
  if (!fs::is_regular_file(path, error))
    return false;
  materials::Problems told_later; // whoever reads the file next
  return is_sole_file(materials::read_sheet_text(path, told_later));
}
} // namespace solemech::tools
