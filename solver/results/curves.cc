// SPDX-License-Identifier: Apache-2.0
#include "solver/results/curves.h"

#include <algorithm>
#include <stdexcept>

namespace solemech::solver
{
void take_back(std::vector<double> &values, double share)
{
  const double before = values[values.size() - 2];
  values.back() = before + share * (values.back() - before);
}

void Curves::grow(const std::string &name, const std::string &unit, const std::string &meaning, double value,
                  bool is_felt)
{
  auto found = std::ranges::find(curves_, name, &Curve::name);
  if (found == curves_.end())
  {
    is_felt_.push_back(is_felt);
    found = curves_.insert(found, Curve{name, unit, meaning, {}});
  }
  found->values.push_back(value);
}

void Curves::take_back(double share)
{
  for (std::size_t i = 0; i < curves_.size(); ++i)
    if (!is_felt_[i])
      solver::take_back(curves_[i].values, share);
}

const std::vector<double> &Curves::operator[](const std::string &name) const
{
  const auto found = std::ranges::find(curves_, name, &Curve::name);
  if (found == curves_.end())
    throw std::logic_error("no curve " + name);
  return found->values;
}
} // namespace solemech::solver
