// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech materials`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct MaterialsRequest
{
  std::vector<std::string>   names; ///< materials to describe in full; empty: the table
  std::optional<std::string> like;  ///< numbers to list the nearest materials by
};

CommandText text_of(const MaterialsRequest &);
void        describe(Options &options, MaterialsRequest &request);
} // namespace solemech::tools
