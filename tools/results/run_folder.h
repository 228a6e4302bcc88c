// SPDX-License-Identifier: Apache-2.0
// A folder that holds one finished run: ROOT/LABEL/1, 2, 3, ... or a folder the user names.
// Everything is first written into a hidden folder beside it; `commit` flushes it to the disk, writes
// manifest.json last and renames the whole, so that a run is either complete or not there at all.
// A folder counts as finished only when its manifest is there and every checksum in it holds.
#pragma once

#include "solver/result_check.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace solemech::tools
{
/// What the manifest says beside the checksums.
/// Folder that finished runs go to unless another one is asked for.
inline constexpr const char *results_root = "results";

struct ManifestFacts
{
  std::string                        label;
  std::string                        case_hash;
  std::map<std::string, std::string> versions; ///< "solemech" and libraries
};

class RunFolder
{
public:
  /// The next free number below root/label.
  /// @throws solver::ResultsError when the folder cannot be made there
  static RunFolder create(const std::filesystem::path &root, const std::string &label);

  /// Exactly this folder, which must not exist yet or be empty.
  /// @throws solver::ResultsError when it holds anything, naming what to do
  static RunFolder create_at(const std::filesystem::path &folder);

  RunFolder(RunFolder &&other) noexcept;
  RunFolder(const RunFolder &) = delete;
  RunFolder &operator=(const RunFolder &) = delete;
  RunFolder &operator=(RunFolder &&) = delete;
  /// Removes what was written, unless committed.
  ~RunFolder();

  /// Where to write a file now, e.g. file("data/results.h5"); makes the folders on the way.
  std::filesystem::path file(const std::filesystem::path &relative) const;

  /// Writes one text file.
  /// @throws solver::ResultsError
  void write(const std::filesystem::path &relative, std::string_view text) const;

  /// Flushes, writes the manifest, renames. Returns the final place.
  /// @throws solver::ResultsError
  std::filesystem::path commit(const ManifestFacts &facts);

private:
  RunFolder(std::filesystem::path working, std::filesystem::path target, bool numbered);

  std::filesystem::path working_;  ///< hidden folder; empty once committed or moved from
  std::filesystem::path target_;   ///< final place; with numbers: the first one to try
  bool                  numbered_; ///< may go to the next number when another run was quicker
};

/// The label as a folder name: letters, digits, dot, dash and underscore; anything else becomes a dash.
std::string folder_name(const std::string &label);

/// True when `folder` is a finished run with this hash of this program version whose files are untouched.
bool is_finished(const std::filesystem::path &folder, const std::string &case_hash,
                 const std::string &program_version);

/// Newest finished run of the same inputs below root/label, or nothing.
std::optional<std::filesystem::path> find_finished(const std::filesystem::path &root,
                                                   const std::string &label, const std::string &case_hash,
                                                   const std::string &program_version);
} // namespace solemech::tools
