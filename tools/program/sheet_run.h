// SPDX-License-Identifier: Apache-2.0
// solemech run on a bench sheet: settles it, prints it, keeps settled.toml and settled.json. Commands that
// change a stack settle a sheet first and go on with its settled.toml.
#pragma once

#include "tools/program/commands.h"
#include "tools/study/job.h"

#include <filesystem>
#include <optional>
#include <string>

namespace solemech::tools
{
/// Nothing when the request names no bench sheet.
/// @throws UsageError when a sheet stands beside other cases
std::optional<Exit> answer_sheet(const RunRequest &request, Job &job);

/// The stack that a sheet settled on.
struct SettledStack
{
  std::filesystem::path file;            ///< settled.toml
  std::string           label;           ///< of the sheet
  bool                  complete = true; ///< its run came to its end
};

/// Settles a sheet, or finds it settled, and says where.
SettledStack settle_beforehand(const std::filesystem::path &path, bool quiet, Job &job);
} // namespace solemech::tools
