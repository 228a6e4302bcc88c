// SPDX-License-Identifier: Apache-2.0
// A folder that holds one finished run: ROOT/LABEL/1, 2, 3, ... or a folder the user names.
// Everything is first written into a hidden folder beside it; `commit` flushes it to the disk, writes
// manifest.json last and renames the whole, so that a run is either complete or not there at all.
// A folder counts as finished only when its manifest is there, names the files that every run has, and every
// checksum in it holds. Nothing is written or read through a link.
#pragma once

#include "solver/results/result_check.h"
#include "tools/language/named_file.h"
#include "tools/output/results/unfinished.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
/// Folder that finished runs go to unless another one is asked for.
inline constexpr const char *results_root = "results";

/// What the manifest says beside the checksums.
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

  /// Where to write a file now, e.g. file("data/results.h5"); makes the folders on the way.
  std::filesystem::path file(const std::filesystem::path &relative) const;

  /// Writes one text file.
  /// @throws solver::ResultsError
  void write(const std::filesystem::path &relative, std::string_view text) const;

  /// Keeps a copy of a file that the case names, under a number; the manifest says what it was.
  /// @throws solver::ResultsError
  void keep_input(const NamedFile &file);

  /// Notes for the manifest which sheet the run is of, as sheet_folder_name() takes it; "" for a prepared
  /// case.
  void tell_sheet(const std::string &sheet) { sheet_ = sheet; }

  /// Flushes, writes the manifest, renames. Returns the final place.
  /// @throws solver::ResultsError
  std::filesystem::path commit(const ManifestFacts &facts);

private:
  RunFolder(std::filesystem::path target, bool numbered);

  Unfinished             working_;  ///< until it is committed
  std::filesystem::path  target_;   ///< final place; with numbers: the first one to try
  bool                   numbered_; ///< may go to the next number when another run was quicker
  std::vector<NamedFile> inputs_;   ///< without their texts
  std::string            sheet_;
};

/// A text as the name of a file or folder: itself when it is short and of letters, digits, dot, dash and
/// underscore alone; else what is left of it and the beginning of its checksum, so that two texts never meet.
std::string folder_name(const std::string &label);

/// Folder below the root for the runs of a sheet, another one for each sheet.
/// @param sheet  its path from the folder that holds the root: "my-heel.toml", "season/my heel.toml"
std::string sheet_folder_name(const std::string &sheet);

/// Stands behind the folder name of runs that the command line changed: they are numbered apart, so that none
/// of them passes for the newest of the case itself.
inline constexpr const char *changed_mark = "-changed";

/// Which sheet a finished run is of, as its manifest says.
struct RunOrigin
{
  std::optional<std::string> sheet; ///< nothing in those of earlier versions
};

/// Nothing when there is no manifest, or when it lacks files that every run has. Checksums are not looked at.
std::optional<RunOrigin> run_origin(const std::filesystem::path &folder);

/// Copies of the files that the case of a finished run names; nothing for a folder of an earlier version,
/// which kept them under their own names.
std::optional<std::vector<NamedFile>> kept_inputs(const std::filesystem::path &folder);

/// True when `folder` is a finished run with this hash of this program version whose files are untouched.
bool is_finished(const std::filesystem::path &folder, const std::string &case_hash,
                 const std::string &program_version);

/// Newest finished run of the same inputs below root/label, or nothing.
std::optional<std::filesystem::path> find_finished(const std::filesystem::path &root,
                                                   const std::string &label, const std::string &case_hash,
                                                   const std::string &program_version);
} // namespace solemech::tools
