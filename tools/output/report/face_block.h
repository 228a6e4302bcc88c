// SPDX-License-Identifier: Apache-2.0
// Charts of the face of a lug: what presses on it while it slides; of a wear its shapes on the way, depth
// over steps with the band that the wear of the court is known to, and grip as it goes.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <vector>

namespace solemech::tools::report
{
/// Empty for runs that slide nothing.
std::vector<LineBlock> face_blocks(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
