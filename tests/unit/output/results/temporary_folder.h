// SPDX-License-Identifier: Apache-2.0
// A folder of its own for a test, removed afterwards.
#pragma once

#include <stdlib.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

namespace solemech::tests
{
struct TemporaryFolder
{
  std::filesystem::path path;

  TemporaryFolder()
  {
    std::string pattern = (std::filesystem::temp_directory_path() / "solemech-test-XXXXXX").string();
    if (!mkdtemp(pattern.data()))
      throw std::runtime_error("no temporary folder");
    path = pattern;
  }
  TemporaryFolder(const TemporaryFolder &) = delete;
  TemporaryFolder &operator=(const TemporaryFolder &) = delete;
  ~TemporaryFolder()
  {
    std::error_code ignored;
    std::filesystem::remove_all(path, ignored);
  }
};

inline std::string text_of(const std::filesystem::path &path)
{
  std::ostringstream text;
  text << std::ifstream(path, std::ios::binary).rdbuf();
  return text.str();
}

inline void put(const std::filesystem::path &path, const std::string &text)
{
  std::filesystem::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary) << text;
}
} // namespace solemech::tests
