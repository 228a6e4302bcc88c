// SPDX-License-Identifier: Apache-2.0
// Whole texts of files. A file that a person names is read wherever it lies. A file that another file names
// is read only below the folder of that one: no way up, no absolute path, no link on the way. So a sheet that
// came from somebody else shows nothing of what lies elsewhere on the disk, not even in a message.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>

namespace solemech::materials
{
struct FileText
{
  enum class State {
    read,
    missing, ///< there is none
    refused  ///< there is something, or may be, that is not read
  };
  State       state = State::missing;
  std::string text;
  std::string reason, cure; ///< unless read, as in Problem
};

/// A file that the person named.
/// @param largest  most bytes taken
FileText file_text(const std::filesystem::path &path, std::size_t largest);

/// A file that a sheet in `folder` names as `name`. Every part of the way is opened by itself without
/// following links (POSIX openat, O_NOFOLLOW), so that nothing changes between looking and reading.
FileText file_text_below(const std::filesystem::path &folder, const std::string &name, std::size_t largest);
} // namespace solemech::materials
