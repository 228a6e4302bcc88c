// SPDX-License-Identifier: Apache-2.0
// A file that a case names, and what its copy in the folder of a run is called. The copy never bears the name
// that the case gives: that name may lead anywhere.
#pragma once

#include <cstddef>
#include <string>

namespace solemech::tools
{
/// `kind` is "stack", "rig", "history" or "reading".
struct NamedFile
{
  std::string kind, name, text;
  bool        is_prepared = false; ///< one of the program's own
};

/// The copy of the file with this number, from 0, relative to the folder of the run.
inline std::string copy_name(const NamedFile &file, std::size_t number)
{
  const bool is_sheet = file.kind == "stack" || file.kind == "rig";
  return "inputs/" + std::to_string(number + 1) + (is_sheet ? ".toml" : ".csv");
}
} // namespace solemech::tools
