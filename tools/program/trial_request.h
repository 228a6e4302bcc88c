// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech trial` on the command line.
#pragma once

#include "tools/answers/trial/trial_request.h"
#include "tools/program/options.h"

namespace solemech::tools
{
CommandText text_of(const TrialRequest &);
void        describe(Options &options, TrialRequest &request);
/// @throws UsageError
void check(const Options &options, const TrialRequest &request);
} // namespace solemech::tools
