// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/face_charts.h"

#include "tools/rigs/facts.h"

#include <algorithm>
#include <iterator>

namespace solemech::tools::rigs
{
std::vector<const Run *> with_faces(const std::vector<const Run *> &runs)
{
  std::vector<const Run *> kept;
  std::copy_if(runs.begin(), runs.end(), std::back_inserter(kept),
               [](const Run *run) { return !run->result.faces.empty(); });
  return kept;
}

LineChart pressure_chart()
{
  return {"pressure on the face", "from leading to trailing end, mm", "pressure over 0.25 mm, kPa", {}};
}

void add_pressure(LineChart &chart, const std::string &name, const solver::FaceLine &face)
{
  chart.lines.push_back({name, scaled(face.place, 1e3), scaled(face.pressure, 1e-3)});
}
} // namespace solemech::tools::rigs
