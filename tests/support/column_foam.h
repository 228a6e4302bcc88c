// SPDX-License-Identifier: Apache-2.0
// A point of foam under coaxial loading, written a second time and on purpose without any header of the
// product: the columns of the reference solutions are made of it, the finite-element program is not.
// Logarithmic strains (axial, lateral, lateral); the frame never turns, so the strain of a branch is simply
// total minus viscous strain. Formulas: Ogden-Hill foam (Ogden 1972; Hill 1978), gas in closed cells (Gibson
// & Ashby, Cellular Solids, 1997), finite linear viscoelasticity in log strain (Reese & Govindjee 1998).
#pragma once

#include <array>
#include <vector>

namespace solemech::tests
{
using Strain = std::array<double, 3>; ///< ln(stretch): axial, lateral x, lateral y [-]

/// Parameters of the foam; the member comments carry symbols and units.
struct ColumnFoam
{
  struct Network
  {
    double mu /* [Pa] */, alpha /* [-] */, beta /* nu/(1-2nu) [-] */;
  };
  struct Relaxing
  {
    double share /* g [-] */, time /* tau [s] */;
  };
  struct Slipping
  {
    double share /* g [-] */, cap /* c, elastic log-strain norm [-] */;
  };

  std::vector<Network>  network;
  std::vector<Relaxing> relaxing;
  std::vector<Slipping> slipping;
  double                relative_density = 0;       ///< R [-]; 0: neither cell gas nor densification
  double                closed_cells = 1;           ///< phi [-]
  double                gas_exponent = 1;           ///< n [-]
  double                densification_modulus = 0;  ///< kappa_d [Pa]
  double                densification_exponent = 3; ///< m [-]
  double                recovery_time = 5;          ///< tau_rec of the slipping branches [s]; infinity: none
  double                atmospheric_pressure = 101325; ///< [Pa]

  double      shear_modulus() const; ///< mu = sum mu_i [Pa]
  double      bulk_modulus() const;  ///< kappa = sum 2 mu_i (1/3 + beta_i) [Pa]
  std::size_t n_branches() const { return relaxing.size() + slipping.size(); }
  bool        slips(std::size_t branch) const { return branch >= relaxing.size(); }
  double      share(std::size_t branch) const;      ///< g of a branch, relaxing ones first [-]
  double      decay_time(std::size_t branch) const; ///< tau_i, or tau_rec of a slipping branch [s]
  double      cap(std::size_t branch) const;        ///< c_j, infinite for a relaxing branch [-]
};

/// Energy per reference volume, principal Kirchhoff stresses and their derivatives to the log strains.
struct FoamPoint
{
  double                               energy = 0; ///< [J/m3]
  std::array<double, 3>                stress{};   ///< tau_a [Pa]
  std::array<std::array<double, 3>, 3> moduli{};   ///< d tau_a / d eps_b [Pa]
};

/// Network, cell gas and densification together: everything that has no memory.
FoamPoint equilibrium(const ColumnFoam &foam, const Strain &strain);

/// Metric of the branch norm, r^2 = e.M e = 2 |dev e|^2 + (kappa/mu) (tr e)^2; a branch stores g mu r^2/2.
std::array<std::array<double, 3>, 3> branch_metric(const ColumnFoam &foam);

/// r^2 of a branch strain and the product M e.
double squared_norm(const std::array<std::array<double, 3>, 3> &metric, const Strain &strain);
Strain times(const std::array<std::array<double, 3>, 3> &matrix, const Strain &strain);
double dot(const Strain &a, const Strain &b);
} // namespace solemech::tests
