// SPDX-License-Identifier: Apache-2.0
// The command line as a value: which command, with what. Both executables read it with the same text, so
// the thin program can hand its arguments on to the solver unchanged.
#pragma once

#include "tools/answers/trial/trial_request.h"

#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

namespace solemech::tools
{
struct HelpRequest
{
  std::string text; ///< ready to print
};

struct VersionRequest
{
  bool verbose = false; ///< build facts too
};

struct CasesRequest
{
};

struct MaterialsRequest
{
  std::vector<std::string> names; ///< materials to describe in full; empty: the table
};

struct CheckRequest
{
  std::vector<std::string> files;    ///< files, or names of prebuilt cases
  std::vector<std::string> settings; ///< "layer.entry=value"
};

struct RunRequest
{
  std::vector<std::string>             cases;          ///< names or files
  std::optional<std::filesystem::path> output;         ///< folder asked for with -o
  std::vector<std::string>             settings;       ///< "layer.entry=value"
  std::string                          lengths = "mm"; ///< unit of printed lengths
  bool                                 json = false;
  bool                                 quiet = false;
  bool                                 details = false;
};

struct LearnRequest
{
  std::string                          name;   ///< lesson or case file; empty: the list
  std::optional<int>                   guess;  ///< number of the choice, from 1
  std::optional<std::filesystem::path> output; ///< folder asked for with -o
  bool                                 json = false;
  bool                                 quiet = false;
};

struct CompareRequest
{
  std::vector<std::string>             cases;  ///< names, files, or folders of finished runs; the first is compared to
  std::optional<std::filesystem::path> output; ///< folder asked for with -o
  bool                                 json = false;
  bool                                 quiet = false;
  bool                                 details = false;
};

struct SheetRequest
{
  std::string file;          ///< to write
  std::string part = "heel"; ///< or "forefoot"
  bool        rig = false;   ///< a rig file instead of a bench sheet
};

struct PlanRequest
{
  std::string sheet;                ///< bench sheet
  std::string question = "rebound"; ///< number that is to be narrowed
  bool        json = false;
  bool        quiet = false;
};

struct BookRequest
{
  std::string folder;    ///< with the sheets
  std::string yardstick; ///< file; empty: yardstick.toml of the folder when it is there
};

using Request =
  std::variant<HelpRequest, VersionRequest, CasesRequest, MaterialsRequest, CheckRequest, RunRequest, CompareRequest,
               LearnRequest, TrialRequest, BookRequest, SheetRequest, PlanRequest>;

/// The command line cannot be understood; says what is wrong and names the nearest command or option.
struct UsageError : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// Reads the arguments after the program's name.
/// @throws UsageError
Request read_command_line(const std::vector<std::string> &arguments);
} // namespace solemech::tools
