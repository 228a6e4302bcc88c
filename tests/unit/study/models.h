// SPDX-License-Identifier: Apache-2.0
// Small models with closed forms for the tests of settling, and a call with everything at its default.
#pragma once

#include "tools/study/settle.h"

#include <cmath>

namespace solemech::tests
{
/// Wraps a model of one parameter set.
template <class Model>
settle::Predict predict_with(Model model)
{
  return [model](const std::vector<std::vector<double>> &sets) {
    std::vector<std::vector<double>> rows;
    for (const auto &set : sets)
      rows.push_back(model(set));
    return rows;
  };
}

inline settle::Settled settled(const std::vector<settle::Parameter>   &parameters,
                               const std::vector<settle::Observation> &observations,
                               const settle::Predict &predict, const settle::Wish &wish = {})
{
  return settle::settle(parameters, observations, predict, wish);
}

/// Linear in u = ln(parameter): y = A u + b. Everything about it is known in closed form.
inline settle::Predict linear_model(std::vector<std::vector<double>> a, std::vector<double> b)
{
  return predict_with([a, b](const std::vector<double> &set) {
    std::vector<double> y = b;
    for (std::size_t i = 0; i < a.size(); ++i)
      for (std::size_t k = 0; k < set.size(); ++k)
        y[i] += a[i][k] * std::log(set[k]);
    return y;
  });
}
} // namespace solemech::tests
