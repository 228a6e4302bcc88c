// SPDX-License-Identifier: Apache-2.0
#include "tools/study/residual.h"

#include <cmath>

namespace solemech::settle
{
std::optional<Residual> two_sided_residual(const Observation &observation, double predicted)
{
  if (!std::isfinite(predicted))
    return std::nullopt;
  if (!observation.by_ratio)
    return Residual{(predicted - observation.value) / observation.doubt, 1 / observation.doubt};
  if (predicted <= 0)
    return std::nullopt;
  const double ratio_doubt = observation.doubt / observation.value;
  return Residual{std::log(predicted / observation.value) / ratio_doubt, 1 / (predicted * ratio_doubt)};
}

std::optional<Residual> residual(const Observation &observation, double predicted)
{
  const auto both = two_sided_residual(observation, predicted);
  if (both && observation.meaning == Meaning::at_least && both->value >= 0)
    return Residual{0, 0};
  return both;
}

Loss wild_loss(double squared_misfit, double at)
{
  const double limit = at * at;
  if (squared_misfit <= limit)
    return {squared_misfit, 1, 0};
  return {limit * (1 + std::log(squared_misfit / limit)), limit / squared_misfit,
          -limit / (squared_misfit * squared_misfit)};
}
} // namespace solemech::settle
