// SPDX-License-Identifier: Apache-2.0
// Where a sensor ran into its end: a flat top with steep flanks.
//
// A top that is only rounded off to the steps q of the converter is flat as well: a parabola within q of its
// peak over the half width w has flanks of mean slope 3 q / w over the next w, so slope * w = 3 q. A sensor
// at its end shows far more; 6 q is the limit here.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <utility>

namespace solemech::records
{
/// First and last sample of the flat top of a pulse, when it is one of a saturated sensor (three equal
/// samples or more).
std::optional<std::pair<std::size_t, std::size_t>> saturated_top(std::span<const double> values);
} // namespace solemech::records
