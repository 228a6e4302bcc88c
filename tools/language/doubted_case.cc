// SPDX-License-Identifier: Apache-2.0
#include "tools/language/doubted_case.h"

#include "tools/language/described_case.h"

#include <algorithm>
#include <cmath>
#include <concepts>
#include <type_traits>

namespace solemech::tools
{
using namespace materials;
using solver::DoubtedNumber;

namespace
{
template <typename Terms>
void scale_shares(Terms &terms, double ratio)
{
  for (auto &term : terms)
    term.share *= ratio;
}

void scale_modulus(Material &material, double ratio)
{
  if (auto *foam = std::get_if<FoamData>(&material.data))
  {
    for (auto &term : foam->network)
      term.shear_modulus *= ratio;
    foam->densification_modulus *= ratio;
  }
  else if (auto *rubber = std::get_if<RubberData>(&material.data))
    for (double *coefficient : {&rubber->c10, &rubber->c20, &rubber->c30, &rubber->c01})
      *coefficient *= ratio;
}

void scale_loss(Material &material, double ratio)
{
  if (auto *foam = std::get_if<FoamData>(&material.data))
  {
    scale_shares(foam->relaxing, ratio);
    scale_shares(foam->slipping, ratio);
  }
  else if (auto *rubber = std::get_if<RubberData>(&material.data))
    scale_shares(rubber->relaxing, ratio);
}

void scale_density(Material &material, double ratio)
{
  material.density *= ratio;
  // More solid in the same room leaves less of it to the cells.
  if (auto *foam = std::get_if<FoamData>(&material.data))
    foam->relative_density = std::min(0.9, foam->relative_density * ratio);
}

void scale_material(Material &material, DoubtedNumber number, double ratio)
{
  if (number == DoubtedNumber::modulus)
    scale_modulus(material, ratio);
  else if (number == DoubtedNumber::loss)
    scale_loss(material, ratio);
  else if (number == DoubtedNumber::density)
    scale_density(material, ratio);
}

/// The member that the doubt is of, if the struct has it.
template <typename Struct>
double *member_of(Struct &object, DoubtedNumber number)
{
  double *found = nullptr;
  for_each_member<Struct>([&](const auto &item) {
    if constexpr (std::same_as<std::remove_cvref_t<decltype(object.*item.at)>, double>)
      if (item.doubt == number)
        found = &(object.*item.at);
  });
  return found;
}
} // namespace

double *doubted_member(solver::Case &setup, DoubtedNumber number, const std::string &of)
{
  for (auto &layer : setup.layers)
    if (layer.name == of)
    {
      auto *found = member_of(layer, number);
      return !found && layer.unit ? member_of(*layer.unit, number) : found;
    }
  return std::visit([&](auto &rig) { return member_of(rig, number); }, setup.rig);
}

void scale_number(solver::Case &setup, DoubtedNumber number, const std::string &of, double ratio)
{
  for (auto &layer : setup.layers)
  {
    if (layer.material.name == of)
      scale_material(layer.material, number, ratio);
    if (layer.ring && layer.ring->name == of)
      scale_material(*layer.ring, number, ratio);
  }
  if (setup.plug.side_material.name == of)
    scale_material(setup.plug.side_material, number, ratio);
  if (double *member = doubted_member(setup, number, of))
    *member *= ratio;
}

std::vector<std::vector<double>> independent_doubts(const std::vector<solver::Doubt> &doubts)
{
  // Doubts that go together almost as one leave a pivot of rounding size: no direction then.
  constexpr double                 least_pivot = 1e-9, rounding = 1e-3;
  const std::size_t                n = doubts.size();
  std::vector<std::vector<double>> factor(n, std::vector<double>(n, 0)); // [doubt][direction]
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = 0; j <= i; ++j)
    {
      double left = i == j ? 1 : doubts[i].together[j];
      for (std::size_t k = 0; k < j; ++k)
        left -= factor[i][k] * factor[j][k];
      if (i == j && left < -rounding)
        return {};
      if (i == j)
        factor[i][i] = left > least_pivot ? std::sqrt(left) : 0;
      else
        factor[i][j] = factor[j][j] > 0 ? left / factor[j][j] : 0;
    }
  std::vector<std::vector<double>> directions;
  for (std::size_t k = 0; k < n; ++k)
  {
    std::vector<double> direction;
    for (std::size_t i = 0; i < n; ++i)
      direction.push_back(factor[i][k] * doubts[i].spread * doubts_in_half_band);
    directions.push_back(std::move(direction));
  }
  return directions;
}

solver::Case moved(const solver::Case &setup, const std::vector<double> &direction, double sign)
{
  solver::Case out = setup;
  out.doubts.clear();
  for (std::size_t i = 0; i < setup.doubts.size(); ++i)
    scale_number(out, setup.doubts[i].number, setup.doubts[i].of, std::exp(sign * direction[i]));
  return out;
}
} // namespace solemech::tools
