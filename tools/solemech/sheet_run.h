// SPDX-License-Identifier: Apache-2.0
// solemech run on a bench sheet: settles it, prints it, keeps settled.toml and settled.json.
#pragma once

#include "tools/explore/solve.h"
#include "tools/solemech/commands.h"

#include <atomic>
#include <optional>

namespace solemech::tools
{
/// Nothing when the request names no bench sheet.
/// @throws UsageError when a sheet stands beside other cases
std::optional<Exit> answer_sheet(const RunRequest &request, const Solve &solve,
                                 const std::atomic<bool> &interrupted);
} // namespace solemech::tools
