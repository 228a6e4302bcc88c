// SPDX-License-Identifier: Apache-2.0
// Members of materials, as a run sees them: names, titles, printed hardness and sources are left out.
#pragma once

#include "materials/contact_heat.h"
#include "materials/court_friction.h"
#include "materials/material.h"
#include "tools/language/descriptor.h"

namespace solemech::tools
{
// clang-format off: tables
template <>
struct Description<materials::NetworkTerm>
{
  using S = materials::NetworkTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::shear_modulus, "shear_modulus"), member(&S::exponent, "exponent"),
    member(&S::volumetric_exponent, "volumetric_exponent"));
};

template <>
struct Description<materials::RelaxingTerm>
{
  using S = materials::RelaxingTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::share, "share"), member(&S::relaxation_time, "time"));
};

template <>
struct Description<materials::SlippingTerm>
{
  using S = materials::SlippingTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::share, "share"), member(&S::cap, "cap"));
};

template <>
struct Description<materials::ThermalData>
{
  using S = materials::ThermalData;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::reference_temperature, "reference_temperature"),
    member(&S::activation_energy, "activation_energy"), member(&S::modulus_per_kelvin, "modulus_per_kelvin"));
};

template <>
struct Description<materials::FoamData>
{
  using S = materials::FoamData;
  static constexpr std::string_view kind = "foam";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::network, "network"), member(&S::relative_density, "relative_density"),
    member(&S::closed_cells, "closed_cells"), member(&S::gas_exponent, "gas_exponent"),
    member(&S::densification_modulus, "densification_modulus"),
    member(&S::densification_exponent, "densification_exponent"), member(&S::relaxing, "relaxing"),
    member(&S::slipping, "slipping"), member(&S::recovery_time, "recovery_time"));
};

template <>
struct Description<materials::RubberData>
{
  using S = materials::RubberData;
  static constexpr std::string_view kind = "rubber";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::c10, "c10"), member(&S::c20, "c20"), member(&S::c30, "c30"), member(&S::c01, "c01"),
    member(&S::bulk_modulus, "bulk_modulus"), member(&S::relaxing, "relaxing"));
};

template <>
struct Description<materials::PlateData>
{
  using S = materials::PlateData;
  static constexpr std::string_view kind = "plate";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::youngs_modulus, "youngs_modulus"), member(&S::poisson_ratio, "poisson"),
    member(&S::relaxing, "relaxing"));
};

template <>
struct Description<materials::Material>
{
  using S = materials::Material;
  static constexpr std::size_t left_out = 6; // name, title, family, hardness, stored readings, source
  static constexpr auto members = std::tuple(
    member(&S::density, "density"),
    part(&S::thermal),
    one_of(&S::data, "", "law"));
};

template <>
struct Description<materials::HeatProperties>
{
  using S = materials::HeatProperties;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::conductivity, "conductivity"), member(&S::density, "density"),
    member(&S::specific_heat, "specific_heat"));
};

template <>
struct Description<materials::FrictionData>
{
  using S = materials::FrictionData;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::mu_ref, "mu_ref"), member(&S::state, "state"),
    member(&S::reference_pressure, "reference_pressure"), member(&S::pressure_exponent, "pressure_exponent"),
    member(&S::pressure_onset, "pressure_onset"), member(&S::reference_speed, "reference_speed"),
    member(&S::speed_exponent, "speed_exponent"), member(&S::speed_onset, "speed_onset"),
    member(&S::reference_temperature, "reference_temperature"), member(&S::per_kelvin, "per_kelvin"),
    member(&S::standard_temperature, "standard_temperature"));
};
} // namespace solemech::tools
