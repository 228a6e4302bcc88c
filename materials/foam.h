// SPDX-License-Identifier: Apache-2.0
// A foam put together from its data at one temperature: network, gas in the cells, densification, branches.
// Shares of branches refer to the moduli of the equilibrium network, gas excluded. Temperature scales
// network, densification and (through the shares) branches, and shifts the relaxation times; recovery times
// stay.
#pragma once

#include "materials/cell_gas.h"
#include "materials/densification.h"
#include "materials/material.h"
#include "materials/ogden_hill.h"
#include "materials/relaxing_branch.h"
#include "materials/slipping_branch.h"
#include "materials/temperature.h"

namespace solemech::materials
{
/// Small-strain isotropic constants.
struct SmallStrain
{
  double shear_modulus;  ///< mu [Pa]
  double bulk_modulus;   ///< kappa [Pa]
  double youngs_modulus; ///< E [Pa]
  double poisson_ratio;  ///< nu [-]
};

inline SmallStrain small_strain_constants(double shear_modulus, double bulk_modulus)
{
  const double mu = shear_modulus, kappa = bulk_modulus;
  return {mu, kappa, 9 * kappa * mu / (3 * kappa + mu), (3 * kappa - 2 * mu) / (2 * (3 * kappa + mu))};
}

struct Foam
{
  std::vector<OgdenHill> network;
  CellGas                gas{.closed_share = 0}; ///< closed_share 0: none
  Densification          densification;          ///< modulus 0: none
  std::vector<Branch>    branches;               ///< relaxing ones first, then slipping ones

  bool has_gas() const { return gas.closed_share > 0 && gas.atmospheric_pressure > 0; }
  bool has_densification() const { return densification.modulus > 0; }

  /// Smallest volume ratio an iterate may have [-].
  double smallest_volume_ratio() const { return admissible_volume_ratio(densification.relative_density); }

  /// Sum of network, gas and densification; branches have principal frames of their own and are not in it.
  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    auto sum = network.front().response(strains);
    for (std::size_t i = 1; i < network.size(); ++i)
      sum = sum + network[i].response(strains);
    if (has_gas())
      sum = sum + gas.response(strains);
    if (has_densification())
      sum = sum + densification.response(strains);
    return sum;
  }

  /// The network alone.
  SmallStrain network_constants() const
  {
    double mu = 0, kappa = 0;
    for (const auto &term : network)
      mu += term.shear_modulus, kappa += term.bulk_modulus();
    return small_strain_constants(mu, kappa);
  }

  /// Network and gas together: what a slow, small test of the foam reads.
  SmallStrain equilibrium_constants() const
  {
    const auto net = network_constants();
    return small_strain_constants(net.shear_modulus,
                                  net.bulk_modulus + (has_gas() ? gas.bulk_modulus() : 0.0));
  }
};

/// Builds a foam at `temperature` [K] under `atmospheric_pressure` [Pa]. Throws InvalidParameter.
inline Foam make_foam(const FoamData &data, const ThermalData &thermal, double temperature,
                      double atmospheric_pressure)
{
  require(!data.network.empty(), "number of network terms", 0, "at least one term");
  const double stiffer = modulus_factor(thermal, temperature), slower = time_shift(thermal, temperature);

  Foam foam;
  for (const auto &term : data.network)
  {
    foam.network.push_back({stiffer * term.shear_modulus, term.exponent, term.volumetric_exponent});
    check(foam.network.back());
  }
  // R = 0 declares a foam whose cells and solid fraction are not modelled.
  if (data.relative_density != 0)
  {
    foam.gas = {data.relative_density, data.closed_cells, atmospheric_pressure, data.gas_exponent};
    foam.densification = {data.relative_density, stiffer * data.densification_modulus,
                          data.densification_exponent};
    check(foam.gas);
    check(foam.densification);
  }

  const auto network = foam.network_constants();
  for (const auto &term : data.relaxing)
  {
    require_not_negative("relaxing share", term.share);
    if (term.share > 0)
      foam.branches.push_back(RelaxingBranch(term.share * network.shear_modulus,
                                             term.share * network.bulk_modulus,
                                             slower * term.relaxation_time));
  }
  for (const auto &term : data.slipping)
  {
    require_not_negative("slipping share", term.share);
    if (term.share > 0)
      foam.branches.push_back(SlippingBranch(
        term.share * network.shear_modulus, term.share * network.bulk_modulus, term.cap, data.recovery_time));
  }
  return foam;
}
} // namespace solemech::materials
