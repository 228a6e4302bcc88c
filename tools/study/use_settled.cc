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
} // namespace

Band propagate(const Settled &settled, double value, const std::vector<double> &gradient)
{
  const double half = band_half_width * std::sqrt(std::max(0.0, along(settled, gradient, gradient)));
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
