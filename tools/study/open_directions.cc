// SPDX-License-Identifier: Apache-2.0
#include "tools/study/open_directions.h"

#include <Eigen/Dense>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::settle
{
namespace
{
/// Below this the readings would narrow a parameter by less than 3 %, were all others known.
constexpr double seen = 0.05;
constexpr double halved = 0.5;
/// Parts weaker than this share of the strongest one are not worth a word.
constexpr double worth_a_word = 0.3;

std::string listed(const std::vector<std::string> &names)
{
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

std::string words_for(const OpenDirection &direction)
{
  if (direction.parts.size() == 1)
    return fmt::format("The readings do not pin down {}.", direction.parts[0].name);
  std::vector<std::string> more, less, names;
  for (const auto &part : direction.parts)
  {
    (part.weight > 0 ? more : less).push_back(part.name);
    names.push_back(part.name);
  }
  const std::string moves = less.empty() ? fmt::format("more {} together", listed(more))
                                         : fmt::format("more {} with less {}", listed(more), listed(less));
  return fmt::format("The readings cannot separate {}: {} would read nearly the same.", listed(names), moves);
}
} // namespace

std::vector<OpenDirection> open_directions(const std::vector<Parameter> &parameters, const Linear &linear)
{
  std::vector<OpenDirection> open;
  const bool                 some_wild = ((linear.weight.array() > 0) && (linear.weight.array() < 1)).any();
  const char                *no_reading = some_wild ? "No reading that fits the rest" : "No reading";
  std::vector<Eigen::Index>  mixed;
  for (Eigen::Index k = 0; k < linear.fisher.rows(); ++k)
    if (parameters[std::size_t(k)].minor)
      continue;
    else if (linear.fisher(k, k) < seen)
      open.push_back(
        {{{parameters[std::size_t(k)].name, 1}},
         1 / std::sqrt(1 + linear.fisher(k, k)),
         fmt::format("{} says anything about {}.", no_reading, parameters[std::size_t(k)].name)});
    else
      mixed.push_back(k);

  if (mixed.empty())
    return open;
  const Eigen::MatrixXd                                fisher = linear.fisher(mixed, mixed);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(fisher);
  for (Eigen::Index axis = 0; axis < fisher.rows(); ++axis)
  {
    OpenDirection direction;
    direction.doubt_left = 1 / std::sqrt(1 + std::max(0.0, eigen.eigenvalues()[axis]));
    if (direction.doubt_left <= halved)
      break; // eigenvalues ascend
    // As changes of ln(parameter): what a person would turn by per cent.
    Eigen::VectorXd change = eigen.eigenvectors().col(axis);
    for (Eigen::Index k = 0; k < change.size(); ++k)
      change[k] *= parameters[std::size_t(mixed[std::size_t(k)])].spread;
    Eigen::Index strongest;
    change.cwiseAbs().maxCoeff(&strongest);
    change /= change[strongest];
    for (Eigen::Index k = 0; k < change.size(); ++k)
      if (std::abs(change[k]) >= worth_a_word)
        direction.parts.push_back({parameters[std::size_t(mixed[std::size_t(k)])].name, change[k]});
    direction.words = words_for(direction);
    open.push_back(std::move(direction));
  }
  return open;
}
} // namespace solemech::settle
