// SPDX-License-Identifier: Apache-2.0
// What a settled model says about other predictions, and which reading to take next (Gauss: variance along a
// gradient; a further reading narrows by the update of one row).
#include "tools/study/judge.h"
#include "tools/study/settle.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::settle
{
namespace
{
double along(const Settled &settled, const std::vector<double> &a, const std::vector<double> &b)
{
  const auto &c = settled.covariance;
  if (a.size() != c.size() || b.size() != c.size())
    throw std::invalid_argument("a gradient needs one entry a parameter");
  double sum = 0;
  for (std::size_t i = 0; i < c.size(); ++i)
    for (std::size_t j = 0; j < c.size(); ++j)
      sum += a[i] * c[i][j] * b[j];
  return sum;
}

template <typename Value>
std::vector<Value> chosen(const std::vector<Value> &all, const std::vector<std::size_t> &which)
{
  std::vector<Value> some;
  for (const auto i : which)
    some.push_back(all[i]);
  return some;
}

std::vector<std::vector<double>> block(const std::vector<std::vector<double>> &matrix,
                                       const std::vector<std::size_t>         &rows,
                                       const std::vector<std::size_t>         &columns)
{
  std::vector<std::vector<double>> some;
  for (const auto i : rows)
    some.push_back(chosen(matrix[i], columns));
  return some;
}
} // namespace

Settled part_of(const Settled &whole, const std::vector<std::size_t> &parameters,
                const std::vector<std::size_t> &observations)
{
  auto part = whole;
  part.parameters = chosen(whole.parameters, parameters);
  part.observations = chosen(whole.observations, observations);
  part.values = chosen(whole.values, parameters);
  part.predictions = chosen(whole.predictions, observations);
  part.jacobian = block(whole.jacobian, observations, parameters);
  part.covariance = block(whole.covariance, parameters, parameters);
  part.correlation = block(whole.correlation, parameters, parameters);
  for (auto &observation : part.observations)
  {
    std::vector<std::size_t> contradicts;
    for (const auto other : observation.contradicts)
      if (const auto at = std::ranges::find(observations, other); at != observations.end())
        contradicts.push_back(std::size_t(at - observations.begin()));
    observation.contradicts = std::move(contradicts);
  }
  return part;
}

bool shows(const Settled &settled, std::size_t parameter, double least_share)
{
  return std::ranges::any_of(settled.jacobian, [&](const std::vector<double> &row) {
    return row[parameter] * row[parameter] * settled.covariance[parameter][parameter] >
           least_share * along(settled, row, row);
  });
}

Band propagate(const Settled &settled, double value, const std::vector<double> &gradient)
{
  const double half = doubts_in_half_band * std::sqrt(std::max(0.0, along(settled, gradient, gradient)));
  return {value, value - half, value + half};
}

std::vector<NextReading> rank_readings(const Settled &settled, const std::vector<Candidate> &candidates,
                                       const std::vector<double> &question)
{
  const double             before = along(settled, question, question);
  std::vector<NextReading> ranked;
  for (std::size_t i = 0; i < candidates.size(); ++i)
  {
    const auto  &candidate = candidates[i];
    const double shared = along(settled, question, candidate.gradient);
    const double spread =
      along(settled, candidate.gradient, candidate.gradient) + candidate.doubt * candidate.doubt;
    const double narrowed = before > 0 && spread > 0 ? shared * shared / spread / before : 0;
    ranked.push_back({candidate.name, i, std::sqrt(std::max(0.0, 1 - narrowed))});
  }
  std::stable_sort(ranked.begin(), ranked.end(),
                   [](const auto &a, const auto &b) { return a.doubt_left < b.doubt_left; });
  return ranked;
}

const char *verdict_words(Verdict verdict)
{
  switch (verdict)
  {
  case Verdict::agree:
    return "agree";
  case Verdict::disagree:
    return "disagree";
  case Verdict::cannot_tell:
    break;
  }
  return "cannot tell";
}
} // namespace solemech::settle
