// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/pair/settle_pair.h"

#include "tools/answers/sheet/settled_case.h"
#include "tools/language/doubted_case.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
/// The unknown number of a pair in the sheets that have it.
struct OneNumber
{
  const Unknown *in_sheet[2] = {nullptr, nullptr};
};

std::vector<OneNumber> numbers_of(const Pair &pair, const SettledTogether &settled)
{
  std::vector<OneNumber> numbers(settled.settled.parameters.size());
  for (std::size_t part = 0; part < pair.parts.size(); ++part)
    for (std::size_t k = 0; k < settled.places[part].size(); ++k)
      numbers[settled.places[part][k]].in_sheet[part] = &pair.parts[part].unknowns[k];
  return numbers;
}

/// Doubts of those numbers of both that show, in the order of `told`.
std::vector<solver::Doubt> joint_doubts(const settle::Settled &settled, const std::vector<OneNumber> &numbers,
                                        std::vector<std::size_t> &told)
{
  std::vector<solver::Doubt> doubts;
  for (std::size_t i = 0; i < numbers.size(); ++i)
  {
    const auto *unknown = numbers[i].in_sheet[numbers[i].in_sheet[0] ? 0 : 1];
    if (unknown->parameter.minor && !settle::shows(settled, i, least_share_of_variance))
      continue;
    solver::Doubt doubt{
      unknown->kind, unknown->target, std::sqrt(std::max(0.0, settled.covariance[i][i])), {}};
    for (const std::size_t j : told)
      doubt.together.push_back(settled.correlation[i][j]);
    doubts.push_back(std::move(doubt));
    told.push_back(i);
  }
  return doubts;
}

/// Layers of one name that both sheets give one number, with the ± of the instrument: the fit pulls them
/// apart by less than anybody reads, and that is no difference between heel and forefoot.
void equal_what_is_written_equal(const Pair &pair, const SettledTogether &settled, CasePair &setups)
{
  for (std::size_t i = 0; i < pair.heel().unknowns.size(); ++i)
    for (std::size_t k = 0; k < pair.forefoot().unknowns.size(); ++k)
    {
      const auto &heel = pair.heel().unknowns[i], &forefoot = pair.forefoot().unknowns[k];
      if (heel.kind != forefoot.kind || heel.target != forefoot.target || !heel.parameter.minor ||
          !forefoot.parameter.minor || heel.parameter.median != forefoot.parameter.median)
        continue;
      const double ratio = settled.sheets[1].settled.values[k] / settled.sheets[0].settled.values[i];
      scale_number(setups.a, heel.kind, heel.target, std::sqrt(ratio));
      scale_number(setups.b, heel.kind, heel.target, std::sqrt(1 / ratio));
    }
}

/// On the rod that both were read on: that of the heel, from its height.
void put_on_one_rod(CasePair &pair)
{
  pair.b.rig = pair.a.rig;
}
} // namespace

SettledTogether settle_pair(const Pair &pair, Job &job, const std::vector<materials::Material> &candidates)
{
  std::vector<SheetToSettle> sheets;
  for (const auto &sheet : pair.parts)
    sheets.push_back({sheet, questions(sheet), sheet.part});
  return settle_together(sheets, job, candidates);
}

Comparison heel_against_forefoot(const Pair &pair, const SettledTogether &settled)
{
  CasePair at_rest{settled.sheets[0].setup, settled.sheets[1].setup};
  for (const std::size_t part : {0, 1})
  {
    auto &setup = part == 0 ? at_rest.a : at_rest.b;
    setup.doubts.clear();
    setup.label = setup.title = pair.parts[part].part;
  }
  equal_what_is_written_equal(pair, settled, at_rest);
  const auto               numbers = numbers_of(pair, settled);
  std::vector<std::size_t> told;
  const auto               doubts = joint_doubts(settled.settled, numbers, told);
  std::vector<CasePair>    moved;
  for (const auto &direction : independent_doubts(doubts))
  {
    auto both = at_rest;
    for (std::size_t d = 0; d < told.size(); ++d)
      for (const std::size_t part : {0, 1})
        if (const auto *unknown = numbers[told[d]].in_sheet[part])
          scale_number(part == 0 ? both.a : both.b, unknown->kind, unknown->target, std::exp(direction[d]));
    put_on_one_rod(both);
    moved.push_back(std::move(both));
  }
  put_on_one_rod(at_rest);
  return prepared(std::move(at_rest.a), std::move(at_rest.b), std::move(moved));
}
} // namespace solemech::tools
