// SPDX-License-Identifier: Apache-2.0
// Entries that only a bench sheet has: [pair] and [[reading]]. They stand here beside those of cases, so that
// the reference page shows both.
#pragma once

#include "tools/language/schema.h"

namespace solemech::tools
{
std::span<const materials::Entry> sheet_entries();
std::span<const Section>          sheet_sections();
} // namespace solemech::tools
