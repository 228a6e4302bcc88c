// SPDX-License-Identifier: Apache-2.0
// A sole of rectangular zones on a flat court, without solving anything: which loads the zones carry, the
// moment that turns the sole about a point, and what touches when the foot is rolled or pitched. The sole is
// a rigid plate on a bed of springs as soft as its stated give: pressure follows the depth of each place
// (Winkler's bed).
#pragma once

#include "solver/case.h"

#include <functional>
#include <vector>

namespace solemech::solver
{
/// What the load of a sole is shared out for.
enum class Movement { even, push_off, braking, side_cut };

/// Force on each zone [N]; `even` is the same pressure everywhere. The sum is tread.force.
std::vector<double> zone_forces(const Tread &tread, Movement movement);

/// Moment that friction sets against turning about (x, y), each zone evenly pressed [N m].
/// @param force   on each zone [N]
/// @param grip    of a zone where it slides towards a heading [rad, from straight ahead to the outer side]
double pivot_moment(const Tread &tread, const std::vector<double> &force, double x, double y,
                    const std::function<double(std::size_t zone, double heading)> &grip);

/// What touches under a tilted foot.
struct TiltedSole
{
  double      contact_share = 0; ///< touching area over the area of all zones [-]
  double      pressure_rise = 0; ///< greatest pressure over the even one of the flat sole [-]
  std::size_t n_zones = 0;       ///< that touch
};

/// @param roll   about the foot's own axis, positive onto the outer side [rad], within +-80 degrees
/// @param pitch  positive onto the toe [rad]
TiltedSole tilted_sole(const Tread &tread, double roll, double pitch);
} // namespace solemech::solver
