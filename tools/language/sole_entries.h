// SPDX-License-Identifier: Apache-2.0
// The schema of sole files: entries of the descriptions in described_sole.h, block by block, and of own
// materials as in cases.
#pragma once

#include "tools/language/schema.h"

namespace solemech::tools
{
std::span<const materials::Entry> sole_entries();
std::span<const Section>          sole_sections();
} // namespace solemech::tools
