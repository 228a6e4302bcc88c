// SPDX-License-Identifier: Apache-2.0
#include "tools/calibrate/loss_fit.h"

#include "tools/calibrate/virtual_bench.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <cmath>
#include <stdexcept>

namespace solemech::tools
{
using materials::FoamData;
using materials::Material;

namespace
{
constexpr double         close_enough = 2e-4; // of the return [-]: a fifth of the 0.1 points asked for
constexpr int            factor_bits = 16;    // beyond which the rounding of the shares decides
constexpr std::uintmax_t most_runs = 40;

Material scaled(Material material, double slipping, double relaxing)
{
  auto &foam = std::get<FoamData>(material.data);
  for (auto &branch : foam.slipping)
    branch.share = rounded_share(slipping * branch.share);
  for (auto &branch : foam.relaxing)
    branch.share = rounded_share(relaxing * branch.share);
  return material;
}

/// Factor at which `return_at`, falling with it, is `wanted`.
template <typename Function>
double factor_for(double wanted, const Function &return_at)
{
  // A value that is close enough counts as the root, which ends the search: runs are dear, digits are not
  // needed.
  const auto off = [&](double factor) {
    const double difference = return_at(factor) - wanted;
    return std::abs(difference) < close_enough ? 0.0 : difference;
  };
  auto       n_runs = most_runs;
  const auto bracket = boost::math::tools::bracket_and_solve_root(
    off, 1.0, 1.5, false, boost::math::tools::eps_tolerance<double>(factor_bits), n_runs);
  const double factor = 0.5 * (bracket.first + bracket.second);
  if (n_runs >= most_runs || off(factor) != 0)
    throw std::runtime_error("no factor on the shares gives the wanted return of the pulse");
  return factor;
}
} // namespace

double rounded_share(double share)
{
  return std::round(1e4 * share) * 1e-4;
}

LossFit fit_loss(const Material &material, double loop_return, double accuracy)
{
  const auto *foam = std::get_if<FoamData>(&material.data);
  if (!foam || foam->slipping.empty() || foam->relaxing.empty())
    throw std::invalid_argument("'" + material.name + "' is not a foam with relaxing and slipping branches");

  LossFit fit;
  if (pulse_return(scaled(material, 0, 1), accuracy).value > loop_return)
    fit.slipping_factor = factor_for(
      loop_return, [&](double factor) { return pulse_return(scaled(material, factor, 1), accuracy).value; });
  else
  {
    fit.slipping_factor = 0;
    fit.relaxing_factor = factor_for(
      loop_return, [&](double factor) { return pulse_return(scaled(material, 0, factor), accuracy).value; });
  }
  fit.material = scaled(material, fit.slipping_factor, fit.relaxing_factor);
  return fit;
}
} // namespace solemech::tools
