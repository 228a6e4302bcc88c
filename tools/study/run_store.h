// SPDX-License-Identifier: Apache-2.0
// Finished single runs, found again by what went into them: resolved case, wish and program version, as one
// SHA-256 fingerprint that names the file. A file is written under a temporary name and renamed, and carries
// a checksum at its end; whatever does not fit is as good as not there. Several processes may share a store.
#pragma once

#include "tools/study/solve.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace solemech::tools
{
/// What is wanted of a run, as a part of its fingerprint.
std::string text_of(const SolveWish &wish);

class RunStore
{
public:
  /// Size beyond which the oldest runs go [bytes]: some ten thousand drops.
  static constexpr std::uintmax_t greatest_size = 1'000'000'000;

  /// Where runs are kept unless the caller names another place.
  static constexpr const char *default_folder = "results/.runs";

  /// @param version  whatever decides the numbers beside the case: the program's release and sources
  RunStore(std::filesystem::path folder, std::string version);

  /// The stored result of this case and wish; a damaged file is not there.
  std::optional<solver::Result> find(const solver::Case &setup, const SolveWish &wish) const;

  /// True when `find` would read a file; cheap, does not look inside.
  bool holds(const solver::Case &setup, const SolveWish &wish) const;

  /// Keeps a result; an incomplete one is left out.
  /// @throws solver::ResultsError when the folder or file cannot be written
  void keep(const solver::Case &setup, const SolveWish &wish, const solver::Result &result) const;

  /// Forgets the runs that were calculated first, until the store is no larger than so many bytes.
  void shrink_to(std::uintmax_t greatest_size) const;

private:
  std::filesystem::path file_of(const solver::Case &setup, const SolveWish &wish) const;

  std::filesystem::path folder_;
  std::string           version_;
};
} // namespace solemech::tools
