// SPDX-License-Identifier: Apache-2.0
#include "tools/program/write_ours.h"

#include "solver/results/result_check.h"
#include "solver/results/write_file.h"

#include <fmt/format.h>

#include <fstream>
#include <system_error>

namespace solemech::tools
{
namespace fs = std::filesystem;

void write_ours(const fs::path &path, const std::string &text, const std::string &mark,
                const std::string &command)
{
  if (fs::is_symlink(path) || (fs::exists(path) && !fs::is_regular_file(path)))
    throw solver::ResultsError(
      fmt::format("'{}' is not an ordinary file. Move it elsewhere.", path.string()));
  if (fs::exists(path))
  {
    std::ifstream old(path, std::ios::binary);
    std::string   begin(2000, '\0');
    old.read(begin.data(), std::streamsize(begin.size()));
    if (begin.find(mark) == std::string::npos)
      throw solver::ResultsError(fmt::format(
        "'{}' was not written by `solemech {}`, so it was left alone. Rename it.", path.string(), command));
  }
  const fs::path beside = path.parent_path() / ("." + solver::chance_name());
  solver::write_file(beside, text);
  std::error_code error;
  fs::rename(beside, path, error);
  if (!error)
    return;
  std::error_code ignored;
  fs::remove(beside, ignored);
  throw solver::ResultsError(solver::cannot_write(path, error.value()));
}
} // namespace solemech::tools
