// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech cases`: nothing.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct CasesRequest
{
};

CommandText text_of(const CasesRequest &);
void        describe(Options &options, CasesRequest &request);
} // namespace solemech::tools
