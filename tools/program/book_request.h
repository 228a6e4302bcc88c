// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech book`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct BookRequest
{
  std::string folder;    ///< with the sheets
  std::string yardstick; ///< file; empty: yardstick.toml of the folder when it is there
};

CommandText text_of(const BookRequest &);
void        describe(Options &options, BookRequest &request);
} // namespace solemech::tools
