// SPDX-License-Identifier: Apache-2.0
#include "solver/bottoming.h"

#include "solver/mesh/locking.h"
#include "solver/results/catalogue.h"
#include "solver/results/metrics.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::solver
{
namespace
{
constexpr double soft_limit = 0.25; // of the useful travel left; common practice, no source
} // namespace

/// A body that is led from one rest to the next has no speed.
std::optional<Objection> CrestWatch::look(const AcceptedStep &step)
{
  const auto &now = step.state;
  const bool  is_slow = now.v[height_] == 0 && (last_v_.size() == 0 || last_v_[height_] == 0);
  if (is_slow)
  {
    if (thickness_.empty() || -now.x[height_] > way_)
      way_ = -now.x[height_], time_ = step.time, thickness_ = layers_.at(now.x);
    return {};
  }
  if (last_v_.size() > 0)
    look_within(step);
  last_x_ = now.x, last_v_ = now.v, last_time_ = now.time;
  return {};
}

void CrestWatch::look_within(const AcceptedStep &step)
{
  const auto  &now = step.state;
  const double dt = now.time - last_time_;
  if (last_v_[height_] >= 0 || now.v[height_] < 0)
    return;
  const auto crest = crest_between(last_x_[height_], last_v_[height_], now.x[height_], now.v[height_], dt);
  if (-crest.place <= way_)
    return;
  way_ = -crest.place, time_ = step.time - (1 - crest.share) * dt;
  thickness_ = layers_.at(on_cubic<Vector>(crest.share, last_x_, dt * last_v_, now.x, dt * now.v));
}

void add_bottoming(const std::vector<Layer> &layers, const std::vector<double> &at_rest,
                   const std::vector<double> &at_peak, Result &result)
{
  double      margin = 1;
  std::string tightest;
  for (std::size_t i = 0; i < at_peak.size(); ++i)
  {
    const auto  &layer = layers[i];
    const double strain = 1 - at_peak[i] / layer.thickness, limit = locking_strain(layer);
    add_reading(result, catalogue.compression_of_layer, layer.name, at_rest[i] - at_peak[i],
                "compression of this layer under the middle of the striker at the peak");
    if (limit > 0 && 1 - strain / limit < margin)
      margin = std::max(0.0, 1 - strain / limit), tightest = layer.name;
  }
  if (tightest.empty())
    return;
  add_reading(result, catalogue.bottoming_margin, margin,
              "share of the useful travel left in the layer that has least (" + tightest + ")");
  result.readings.back().part = tightest;
  if (margin <= 0)
    result.warnings.push_back({catalogue.greatest_compression, tightest + " bottoms out"});
  else if (margin < soft_limit)
    result.warnings.push_back(
      {catalogue.greatest_compression, fmt::format("close to the soft limit of {}", tightest)});
}
} // namespace solemech::solver
