// SPDX-License-Identifier: Apache-2.0
#include "solver/sole_on_court.h"

#include "numerics/rising_root.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

namespace solemech::solver
{
namespace
{
constexpr int n_cells = 40; ///< of a zone each way: the touching share is good to about 1 %

struct Cell
{
  double      x, y, area; ///< [m, m, m2]
  std::size_t zone;
};

std::vector<Cell> cells_of(const Tread &tread)
{
  std::vector<Cell> cells;
  for (std::size_t z = 0; z < tread.zones.size(); ++z)
  {
    const auto &zone = tread.zones[z];
    for (int i = 0; i < n_cells; ++i)
      for (int j = 0; j < n_cells; ++j)
        cells.push_back({zone.x + zone.length * ((i + 0.5) / n_cells - 0.5),
                         zone.y + zone.width * ((j + 0.5) / n_cells - 0.5),
                         zone.length * zone.width / (n_cells * n_cells), z});
  }
  return cells;
}

double part(const TreadZone &zone, Movement movement)
{
  switch (movement)
  {
  case Movement::push_off:
    return zone.push_off;
  case Movement::braking:
    return zone.braking;
  case Movement::side_cut:
    return zone.side_cut;
  case Movement::even:
    break;
  }
  return zone.length * zone.width;
}
} // namespace

std::vector<double> zone_forces(const Tread &tread, Movement movement)
{
  std::vector<double> forces;
  for (const auto &zone : tread.zones)
    forces.push_back(part(zone, movement));
  const double whole = std::accumulate(forces.begin(), forces.end(), 0.0);
  for (double &force : forces)
    force *= tread.force / whole;
  return forces;
}

double pivot_moment(const Tread &tread, const std::vector<double> &force, double x, double y,
                    const std::function<double(std::size_t zone, double heading)> &grip)
{
  double moment = 0;
  for (const auto &cell : cells_of(tread))
  {
    const auto  &zone = tread.zones[cell.zone];
    const double dx = cell.x - x, dy = cell.y - y;
    const double share = cell.area / (zone.length * zone.width);
    moment += grip(cell.zone, std::atan2(dx, -dy)) * force[cell.zone] * share * std::hypot(dx, dy);
  }
  return moment;
}

TiltedSole tilted_sole(const Tread &tread, double roll, double pitch)
{
  const auto          cells = cells_of(tread);
  std::vector<double> drop; // of each cell below the origin of the tilted sole
  double              area = 0;
  for (const auto &cell : cells)
  {
    drop.push_back(cell.x * std::tan(pitch) + cell.y * std::tan(roll));
    area += cell.area;
  }
  // In units of the even pressure: a place at the depth `give` carries it.
  const auto force = [&](double depth) {
    double sum = 0;
    for (std::size_t i = 0; i < cells.size(); ++i)
      sum += cells[i].area * std::max(0.0, depth + drop[i]) / tread.give;
    return sum / area;
  };
  const double deepest = *std::max_element(drop.begin(), drop.end());
  const double low = -deepest;
  double       high = low + tread.give;
  while (force(high) < 1)
    high += high - low;
  const double      depth = numerics::rising_root([&](double at) { return force(at) - 1; }, low, high);
  TiltedSole        tilted;
  std::vector<char> touches(tread.zones.size(), 0);
  for (std::size_t i = 0; i < cells.size(); ++i)
    if (depth + drop[i] > 0)
    {
      tilted.contact_share += cells[i].area / area;
      tilted.pressure_rise = std::max(tilted.pressure_rise, (depth + drop[i]) / tread.give);
      touches[cells[i].zone] = 1;
    }
  tilted.n_zones = static_cast<std::size_t>(std::count(touches.begin(), touches.end(), 1));
  return tilted;
}
} // namespace solemech::solver
