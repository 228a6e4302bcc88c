// SPDX-License-Identifier: Apache-2.0
#include "tools/study/judge.h"
#include "tools/study/settle.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::settle
{
namespace
{
std::string together(const std::vector<std::string> &lines)
{
  std::string text;
  for (const auto &line : lines)
    text += (text.empty() ? "" : "\n") + line;
  return text;
}

void check(const Parameter &p, std::vector<std::string> &problems)
{
  if (!(p.median > 0) || !std::isfinite(p.median))
    problems.push_back(fmt::format("{}: the assumed value is {}; it must be positive", p.name, p.median));
  if (!(p.spread > 0) || !std::isfinite(p.spread))
    problems.push_back(
      fmt::format("{}: the assumed spread is {}; it must be positive (0.1 is about 10 %)", p.name, p.spread));
  if (!(p.lowest > 0) || !(p.highest > p.lowest) || !std::isfinite(p.highest))
    problems.push_back(fmt::format("{}: the limits {} and {} must be positive and in this order", p.name,
                                   p.lowest, p.highest));
}

void check(const Observation &o, std::vector<std::string> &problems)
{
  if (!std::isfinite(o.value))
    problems.push_back(fmt::format("{}: the reading is not a number", o.name));
  else if (!std::isfinite(o.doubt) || o.doubt <= 0)
    problems.push_back(
      fmt::format("{}: an uncertainty of {} would make the reading perfect. Give the ± of the instrument",
                  o.name, o.doubt));
  else if (o.doubt > std::abs(o.value))
    problems.push_back(
      fmt::format("{}: ±{} is larger than the reading {}, so the reading says nothing. Leave "
                  "it out or check its unit",
                  o.name, shown(o.shown, doubts_in_half_band * o.doubt), shown(o.shown, o.value)));
  else if (o.by_ratio && o.value <= 0)
    problems.push_back(
      fmt::format("{}: a reading compared by ratio must be positive, this one is {:.4g}", o.name, o.value));
}
} // namespace

ImpossibleInput::ImpossibleInput(std::vector<std::string> all)
  : std::runtime_error(together(all)), problems(std::move(all))
{
}

void check_inputs(const std::vector<Parameter> &parameters, const std::vector<Observation> &observations,
                  bool predict_only)
{
  std::vector<std::string> problems;
  for (const auto &parameter : parameters)
    check(parameter, problems);
  for (const auto &observation : observations)
    check(observation, problems);
  if (parameters.empty())
    problems.emplace_back("nothing is unknown: there is no number to settle");
  if (!predict_only &&
      std::all_of(observations.begin(), observations.end(), [](const auto &o) { return o.held_out; }))
    problems.emplace_back("there is no reading to fit to; readings that are held out are only compared");
  if (!problems.empty())
    throw ImpossibleInput(std::move(problems));
}
} // namespace solemech::settle
