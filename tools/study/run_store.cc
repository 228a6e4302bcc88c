// SPDX-License-Identifier: Apache-2.0
#include "tools/study/run_store.h"

#include "solver/results/result_file.h"
#include "solver/results/write_file.h"
#include "tools/language/case_text.h"
#include "tools/language/checksum.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <fstream>
#include <iterator>
#include <vector>

namespace solemech::tools
{
namespace fs = std::filesystem;

namespace
{
// The checksum behind the HDF5 data: a reader of the format does not look there.
constexpr std::size_t checksum_length = 64;

std::string bytes_of(const fs::path &path)
{
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// True when the file ends with the checksum of what stands before it.
bool is_whole(const fs::path &path)
{
  const std::string bytes = bytes_of(path);
  if (bytes.size() <= checksum_length)
    return false;
  const std::string_view all(bytes);
  const auto             data = all.substr(0, all.size() - checksum_length);
  return sha256_of_text(data) == all.substr(data.size());
}

/// Half a file of a process that was killed: no other one has a hidden name for a day.
bool is_left_over(const fs::directory_entry &entry)
{
  std::error_code error;
  const auto      written = entry.last_write_time(error);
  return !error && entry.path().filename().string().starts_with('.') && entry.is_regular_file(error) &&
         fs::file_time_type::clock::now() - written > std::chrono::hours(24);
}

struct RemovedAtEnd
{
  fs::path path;
  ~RemovedAtEnd()
  {
    std::error_code ignored;
    fs::remove(path, ignored);
  }
};
} // namespace

std::string text_of(const SolveWish &wish)
{
  return fmt::format("; pictures {}, error {}, level {}", wish.pictures, wish.estimate_error, wish.level);
}

RunStore::RunStore(fs::path folder, std::string version)
  : folder_(std::move(folder)), version_(std::move(version))
{
}

fs::path RunStore::file_of(const solver::Case &setup, const SolveWish &wish) const
{
  return folder_ / (case_hash(setup, version_ + text_of(wish)) + ".h5");
}

bool RunStore::holds(const solver::Case &setup, const SolveWish &wish) const
{
  std::error_code ignored;
  return fs::is_regular_file(file_of(setup, wish), ignored);
}

std::optional<solver::Result> RunStore::find(const solver::Case &setup, const SolveWish &wish) const
{
  const fs::path  path = file_of(setup, wish);
  std::error_code ignored;
  if (!fs::is_regular_file(path, ignored) || !is_whole(path))
    return std::nullopt;
  try
  {
    auto stored = solver::read_result_file(path);
    if (stored.runs.size() == 1 && stored.case_hash == path.stem().string())
      return std::move(stored.runs.front().result);
  }
  catch (const solver::ResultsError &)
  {
    // Of another kind or schema: it is calculated again and replaced.
  }
  return std::nullopt;
}

void RunStore::keep(const solver::Case &setup, const SolveWish &wish, const solver::Result &result) const
{
  if (!result.complete)
    return;
  const fs::path  path = file_of(setup, wish);
  std::error_code error;
  for (const auto &place : {folder_, folder_.parent_path()})
    if (fs::is_symlink(fs::symlink_status(place, error)))
      throw solver::ResultsError(solver::cannot_write(place, ELOOP));
  fs::create_directories(folder_, error);
  if (error)
    throw solver::ResultsError(solver::cannot_write(folder_, error.value()));

  const RemovedAtEnd temporary{folder_ / ("." + solver::chance_name())};
  solver::write_result_file(temporary.path, {setup.label,
                                             "",
                                             canonical_text(setup),
                                             path.stem().string(),
                                             {{"solemech", version_}},
                                             {{setup.label, result}}});
  const std::string data = bytes_of(temporary.path);
  solver::write_file(temporary.path, data + sha256_of_text(data));
  fs::rename(temporary.path, path, error);
  if (error)
    throw solver::ResultsError(solver::cannot_write(path, error.value()));
}

void RunStore::shrink_to(std::uintmax_t greatest_size) const
{
  struct Stored
  {
    fs::file_time_type written;
    std::uintmax_t     size;
    fs::path           path;
  };
  std::vector<Stored> files;
  std::uintmax_t      total = 0;
  std::error_code     ignored; // what another process removes meanwhile is no loss
  for (const auto &entry : fs::directory_iterator(folder_, ignored))
    if (is_left_over(entry))
      fs::remove(entry.path(), ignored);
    else if (entry.path().extension() == ".h5" && entry.is_regular_file(ignored))
    {
      files.push_back({entry.last_write_time(ignored), entry.file_size(ignored), entry.path()});
      total += files.back().size;
    }
  std::sort(files.begin(), files.end(),
            [](const Stored &a, const Stored &b) { return a.written < b.written; });
  for (auto file = files.begin(); file != files.end() && total > greatest_size; ++file)
  {
    fs::remove(file->path, ignored);
    total -= file->size;
  }
}
} // namespace solemech::tools
