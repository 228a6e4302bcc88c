// SPDX-License-Identifier: Apache-2.0
#include "solver/bottoming.h"

#include "solver/mesh/locking.h"
#include "solver/results/catalogue.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::solver
{
namespace
{
constexpr double soft_limit = 0.25; // of the useful travel left; common practice, no source
} // namespace

void add_bottoming(const StackModel &model, const std::vector<double> &thickness, Result &result)
{
  double      margin = 1;
  std::string tightest;
  for (std::size_t i = 0; i < thickness.size(); ++i)
  {
    const auto  &layer = model.input.layers[i];
    const double strain = 1 - thickness[i] / layer.thickness, limit = locking_strain(layer);
    add_reading(result, catalogue.compression_of_layer, layer.name, model.rest_thickness[i] - thickness[i],
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
