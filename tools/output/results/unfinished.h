// SPDX-License-Identifier: Apache-2.0
// A hidden folder that is being filled, and the lock file beside it that says that somebody is at it. The
// lock (flock) ends with the process, however it ends, and holds between containers that share a disk. So
// what nobody holds any more is known, and swept by the next run.
#pragma once

#include <filesystem>

namespace solemech::tools
{
class Unfinished
{
public:
  /// @throws solver::ResultsError when the folder cannot be made in `parent`
  explicit Unfinished(const std::filesystem::path &parent);
  Unfinished(Unfinished &&other) noexcept;
  Unfinished(const Unfinished &) = delete;
  Unfinished &operator=(const Unfinished &) = delete;
  Unfinished &operator=(Unfinished &&) = delete;
  /// Removes what is still there, the lock last.
  ~Unfinished();

  const std::filesystem::path &folder() const { return folder_; }

private:
  std::filesystem::path folder_, lock_;
  int                   descriptor_ = -1; ///< of the lock; -1: moved from
};

/// Removes the unfinished folders in `parent` that nobody holds.
void sweep_unfinished(const std::filesystem::path &parent);
} // namespace solemech::tools
