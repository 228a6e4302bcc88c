// SPDX-License-Identifier: Apache-2.0
// Plain data of a material as the library or a bench sheet gives it: numbers in SI with their source.
// Laws (ogden_hill.h, ...) are built from these numbers; nothing here evaluates anything.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace solemech::materials
{
/// One network term of the compressible foam (Ogden-Hill).
struct NetworkTerm
{
  double shear_modulus = 0;       ///< mu_i [Pa], > 0
  double exponent = 2;            ///< alpha_i [-], not 0
  double volumetric_exponent = 0; ///< beta_i = nu/(1 - 2 nu) [-], >= 0
};

/// A relaxing (viscoelastic) branch.
struct RelaxingTerm
{
  double share = 0;           ///< g_i, modulus relative to the equilibrium network [-], >= 0
  double relaxation_time = 0; ///< tau_i at the reference temperature [s], > 0
};

/// A slipping (rate-independent) branch.
struct SlippingTerm
{
  double share = 0; ///< g_j, modulus relative to the equilibrium network [-], >= 0
  double cap = 0;   ///< c_j, elastic log-strain norm at which it slips [-], > 0
};

/// How a material answers to temperature.
struct ThermalData
{
  double reference_temperature = 296.15; ///< [K]
  double activation_energy = 0;          ///< Arrhenius shift of relaxation times [J/mol]; 0: none
  double modulus_per_kelvin = 0;         ///< d ln(modulus)/dT [1/K]; negative softens when warm
};

struct FoamData
{
  std::vector<NetworkTerm> network;
  double relative_density = 0;       ///< R, foam over polymer density [-]; 0: no cell gas, no densification
  double closed_cells = 1;           ///< phi, share of cells still closed [-], 0..1
  double gas_exponent = 1;           ///< n [-]; 1 isothermal
  double densification_modulus = 0;  ///< kappa_d [Pa], >= 0
  double densification_exponent = 3; ///< m [-], > 1
  std::vector<RelaxingTerm> relaxing;
  std::vector<SlippingTerm> slipping;
  double                    recovery_time = 5; ///< tau_rec of the slipping branches [s], > 0
};

struct RubberData
{
  double                    c10 = 0, c20 = 0, c30 = 0; ///< Yeoh coefficients [Pa]
  double                    c01 = 0;                   ///< Mooney-Rivlin second coefficient [Pa]; 0 for Yeoh
  double                    bulk_modulus = 0;          ///< kappa [Pa], > 20 x shear modulus
  std::vector<RelaxingTerm> relaxing;                  ///< on the isochoric part

  /// At rest and small strain, taken as incompressible: E = 3 G, G = 2 (C10 + C01) [Pa].
  double youngs_modulus() const { return 6 * (c10 + c01); }
};

/// Plates, boards, cork: small strain, large rotation (quadratic in logarithmic strain).
struct PlateData
{
  double                    youngs_modulus = 0; ///< E in the plane [Pa]
  double                    poisson_ratio = 0;  ///< nu [-], 0..0.45
  std::vector<RelaxingTerm> relaxing;
};

/// Readings that the virtual bench took of the material, stored by the calibration run.
struct BenchReadings
{
  double ball_rebound = -1; ///< ISO 8307 ball, height ratio [-]; < 0: not read
  double pulse_return = -1; ///< loop return of a 2000 N, 185 ms press pulse [-]; < 0: not read
  double asker_c = -1;      ///< Asker C gauge on a thick block after 3 s [points]; < 0: not read
  double shore_a = -1;      ///< Shore A gauge, the same way [points]; < 0: not read
};

/// What the source of a material says that it reads; the calibration turns its stiffness and loss until the
/// virtual bench reads the same. A stated hardness is `Material::hardness`.
struct StatedReadings
{
  double ball_rebound = -1; ///< height ratio [-]; < 0: not stated
  double pulse_return = -1; ///< loop return of the press pulse [-]; < 0: not stated
};

/// What a stated use leaves of a fresh material, as a band, since sources contradict each other. No run reads
/// it.
struct UseBand
{
  std::string kind;                                 ///< "break-in" or "ageing"
  std::string use;                                  ///< how much of it, for people: "500 km"
  double      stiffness_from = 1, stiffness_to = 1; ///< modulus over that of the fresh material [-]
  double      return_from = 1, return_to = 1;       ///< energy return over that of the fresh material [-]
  std::string source;
};

struct Material
{
  std::string name;        ///< address in case files, e.g. "eva-soft"
  std::string title;       ///< one line for people
  std::string family;      ///< "foam", "rubber", "plate", "film", "insert", "board"
  double      density = 0; ///< [kg/m3]
  ThermalData thermal;
  std::variant<FoamData, RubberData, PlateData> data;
  std::string          hardness; ///< as printed, with its scale and relation, e.g. "42 AskerC"
  BenchReadings        readings;
  StatedReadings       stated;
  std::vector<UseBand> after_use;
  std::string          source;                                ///< where the numbers come from, for people
  bool                 invented = false, from_memory = false; ///< whether some of its numbers are
};
} // namespace solemech::materials
