// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/unfinished.h"

#include "solver/results/result_check.h"
#include "solver/results/write_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <set>
#include <utility>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
constexpr std::string_view beginning = ".unfinished-", ending = ".lock";

/// True when the lock is ours and still the file of that name. Where the file system knows no locks nobody
/// sweeps, so that going on without one is safe.
bool is_held(int descriptor, bool without_locks)
{
  if (flock(descriptor, LOCK_EX | LOCK_NB) != 0 && (errno == EWOULDBLOCK || !without_locks))
    return false;
  struct stat status
  {
  };
  return fstat(descriptor, &status) == 0 && status.st_nlink > 0;
}

fs::path lock_of(const fs::path &folder)
{
  return folder.string() + std::string(ending);
}

void remove_if_nobodys(const fs::path &folder)
{
  const auto lock = lock_of(folder);
  const int  descriptor = open(lock.c_str(), O_RDWR | O_CREAT | O_NOFOLLOW | O_CLOEXEC, 0666);
  if (descriptor < 0)
    return;
  std::error_code ignored;
  if (is_held(descriptor, false))
  {
    fs::remove_all(folder, ignored);
    if (!fs::exists(fs::symlink_status(folder, ignored)))
      fs::remove(lock, ignored);
  }
  close(descriptor);
}

/// Folders of earlier versions, ".3.unfinished-4242", had no lock: a day without a new file is long enough.
bool is_old_and_left(const fs::path &folder)
{
  std::error_code error;
  const auto      name = folder.filename().string();
  const auto      written = fs::last_write_time(folder, error);
  return !error && name.starts_with('.') && name.find(".unfinished-") != std::string::npos &&
         !name.starts_with(beginning) && fs::is_directory(fs::symlink_status(folder, error)) &&
         fs::file_time_type::clock::now() - written > std::chrono::hours(24);
}
} // namespace

Unfinished::Unfinished(const fs::path &parent)
{
  constexpr int n_tries = 100; // a sweeping process may take a lock that is just being made
  for (int i = 0; i < n_tries && descriptor_ < 0; ++i)
  {
    folder_ = parent / (std::string(beginning) + solver::chance_name());
    lock_ = lock_of(folder_);
    descriptor_ = open(lock_.c_str(), O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
    if (descriptor_ < 0)
      throw solver::ResultsError(solver::cannot_write(lock_, errno));
    if (!is_held(descriptor_, true))
      close(std::exchange(descriptor_, -1));
  }
  std::error_code error;
  if (descriptor_ >= 0 && fs::create_directory(folder_, error))
    return;
  const int reason = error ? error.value() : EBUSY;
  if (descriptor_ >= 0)
  {
    fs::remove(lock_, error);
    close(descriptor_);
  }
  throw solver::ResultsError(solver::cannot_write(folder_, reason));
}

Unfinished::Unfinished(Unfinished &&other) noexcept
  : folder_(std::move(other.folder_)), lock_(std::move(other.lock_)),
    descriptor_(std::exchange(other.descriptor_, -1))
{
}

Unfinished::~Unfinished()
{
  if (descriptor_ < 0)
    return;
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
  fs::remove(lock_, ignored);
  close(descriptor_);
}

void sweep_unfinished(const fs::path &parent)
{
  std::set<fs::path> left;
  std::error_code    error;
  for (fs::directory_iterator entry(parent, error), end; !error && entry != end; entry.increment(error))
  {
    auto name = entry->path().filename().string();
    if (is_old_and_left(entry->path()))
      fs::remove_all(entry->path(), error);
    if (!name.starts_with(beginning))
      continue;
    if (name.ends_with(ending))
      name.resize(name.size() - ending.size());
    left.insert(parent / name);
  }
  for (const auto &folder : left)
    remove_if_nobodys(folder);
}
} // namespace solemech::tools
