// SPDX-License-Identifier: Apache-2.0
// Materials: members as a run sees them, and the entries of their blocks. Names, titles, printed hardness and
// sources are for people.
#pragma once

#include "materials/contact_heat.h"
#include "materials/court_friction.h"
#include "materials/material.h"
#include "tools/language/descriptor.h"

namespace solemech::tools
{
// Tables: a row is read as one line.
// clang-format off
namespace described
{
// What several laws take, each in its own way.
constexpr Said shear_modulus = said("shear_modulus", Dimension::pressure, above_to(0, 1e11), "",
  "Shear modulus of the network or rubber at small strain.", "", "youngs_modulus");
constexpr Said poisson = said("poisson", Dimension::number, within(0, 0.499), "0.1",
  "Poisson ratio of the foam network or of a plate (plates up to 0.45).", "", "volumetric_exponent");
constexpr Said youngs_modulus = said("youngs_modulus", Dimension::pressure, above_to(0, 1e12), "",
  "Young's modulus of a plate, board, rubber or film.", "", "shear_modulus");
constexpr Said relaxing = said("relaxing", Dimension::blocks, any_value, "",
    "Branches that relax with time.");
} // namespace described

template <>
struct Description<materials::NetworkTerm>
{
  using S = materials::NetworkTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::shear_modulus, "shear_modulus")
      .as(Dimension::pressure, above_to(0, 1e11), required, "Shear modulus of the term."),
    member(&S::exponent, "exponent")
      .as(Dimension::number, within(-50, 50), "2", "Exponent alpha of the term, not 0."),
    said("poisson", Dimension::number, within(0, 0.499), "0.1", "Poisson ratio of the term.", "",
         "volumetric_exponent"),
    said("volumetric_exponent", Dimension::number, within(0, 1000), "", "Exponent beta of the term.", "",
         "poisson"),
    member(&S::volumetric_exponent, "volumetric_exponent"));
};

template <>
struct Description<materials::RelaxingTerm>
{
  using S = materials::RelaxingTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::share, "share")
      .as(Dimension::share, within(0, 1000), required,
          "Modulus of the branch divided by that of the equilibrium network."),
    member(&S::relaxation_time, "time")
      .as(Dimension::time, above_to(0, 1e12), required, "Relaxation time at the reference temperature."));
};

template <>
struct Description<materials::SlippingTerm>
{
  using S = materials::SlippingTerm;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::share, "share")
      .as(Dimension::share, within(0, 1000), required,
          "Modulus of the branch divided by that of the equilibrium network."),
    member(&S::cap, "cap")
      .as(Dimension::share, above_to(0, 10), required, "Elastic log-strain norm at which it slips."));
};

template <>
struct Description<materials::ThermalData>
{
  using S = materials::ThermalData;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::reference_temperature, "reference_temperature")
      .as(Dimension::temperature, within(173.15, 473.15), "23 °C", "Temperature at which the numbers are "
                                                                   "valid."),
    member(&S::activation_energy, "activation_energy")
      .as(Dimension::molar_energy, within(0, 1e6), "0 kJ/mol",
          "Activation energy of the (Arrhenius) shift of the relaxation times; 0: no shift."),
    member(&S::modulus_per_kelvin, "modulus_per_kelvin")
      .as(Dimension::per_kelvin, within(-0.1, 0.1), "0 %/K",
          "Relative change of the moduli per kelvin; negative: softer when warm."));
};

template <>
struct Description<materials::FoamData>
{
  using S = materials::FoamData;
  static constexpr std::string_view kind = "foam";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    described::shear_modulus,
    said("exponent", Dimension::number, within(-50, 50), "2",
         "Exponent alpha of a foam with one network term, not 0."),
    described::poisson,
    said("volumetric_exponent", Dimension::number, within(0, 1000), "",
         "Exponent beta = nu/(1 - 2 nu) of the foam network, instead of poisson.", "", "poisson"),
    said("network", Dimension::blocks, any_value, "", "Several network terms instead of one.", "",
         "shear_modulus"),
    member(&S::network, "network"),
    member(&S::relative_density, "relative_density")
      .as(Dimension::share, within(0, 0.95), "0",
          "Density of the foam divided by that of its polymer; 0: no cell gas, no densification.", "",
          "polymer_density"),
    said("polymer_density", Dimension::density, above_to(0, 25000), "",
         "Density of the polymer without cells, instead of relative_density.", "", "relative_density"),
    member(&S::closed_cells, "closed_cells")
      .as(Dimension::share, within(0, 1), "1", "Share of the cells that are still closed."),
    member(&S::gas_exponent, "gas_exponent")
      .as(Dimension::number, within(1, 1.67), "1", "Polytropic exponent of the cell gas; 1: isothermal."),
    member(&S::densification_modulus, "densification_modulus")
      .as(Dimension::pressure, within(0, 1e9), "0 MPa",
          "Scale of the pressure that rises as the cells close up."),
    member(&S::densification_exponent, "densification_exponent")
      .as(Dimension::number, above_to(1, 20), "3", "How steeply that pressure rises."),
    described::relaxing, member(&S::relaxing, "relaxing"),
    said("slipping", Dimension::blocks, any_value, "", "Branches that slip, at any speed."),
    member(&S::slipping, "slipping"),
    member(&S::recovery_time, "recovery_time")
      .as(Dimension::time, above_to(0, 1e9), "5 s", "Time for slipping branches to recover at rest."));
};

template <>
struct Description<materials::RubberData>
{
  using S = materials::RubberData;
  static constexpr std::string_view kind = "rubber";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    described::shear_modulus, described::youngs_modulus,
    member(&S::c10, "c10")
      .as(Dimension::pressure, within(0, 1e10), "", "First Yeoh or Mooney-Rivlin coefficient of a rubber."),
    member(&S::c20, "c20")
      .as(Dimension::pressure, within(-1e10, 1e10), "0 MPa", "Second Yeoh coefficient of a rubber."),
    member(&S::c30, "c30")
      .as(Dimension::pressure, within(-1e10, 1e10), "0 MPa", "Third Yeoh coefficient of a rubber."),
    member(&S::c01, "c01")
      .as(Dimension::pressure, within(-1e10, 1e10), "0 MPa", "Second Mooney-Rivlin coefficient of a rubber."),
    // Filled rubber: 1 to 2 GPa (from memory); the lower end keeps the mixed element well conditioned.
    member(&S::bulk_modulus, "bulk_modulus")
      .as(Dimension::pressure, above_to(0, 1e12), "1 GPa", "Bulk modulus of a rubber or film."),
    described::relaxing, member(&S::relaxing, "relaxing"));
};

template <>
struct Description<materials::PlateData>
{
  using S = materials::PlateData;
  static constexpr std::string_view kind = "plate";
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::youngs_modulus, "youngs_modulus").as(described::youngs_modulus),
    member(&S::poisson_ratio, "poisson").as(described::poisson),
    described::relaxing, member(&S::relaxing, "relaxing"));
};

template <>
struct Description<materials::Material>
{
  using S = materials::Material;
  static constexpr std::size_t left_out = 0;
  static constexpr auto shown = std::tuple(
    member(&S::name, "name"), member(&S::title, "title"), member(&S::family, "family"),
    member(&S::hardness, "hardness"), member(&S::readings, "readings"), member(&S::stated, "stated"),
    member(&S::after_use, "after_use"), member(&S::source, "source"), member(&S::invented, "invented"),
    member(&S::from_memory, "from_memory"));
  static constexpr auto members = std::tuple(
    said("name", Dimension::text, any_value, required, "Name of the material, used in layers."),
    said("from", Dimension::text, any_value, "",
         "Known material to start from. The other entries change it."),
    said("title", Dimension::text, any_value, "", "Title, one line."),
    said("family", Dimension::choice, any_value, "foam", "Kind of material.",
         "foam|rubber|plate|film|insert|board"),
    said("law", Dimension::choice, any_value, "",
         "How it is computed; default: foam for foams, rubber for rubber and film, plate for the rest.",
         "foam|rubber|plate"),
    member(&S::density, "density")
      .as(Dimension::density, above_to(0, 25000), required, "Density of the material as built in."),
    said("hardness", Dimension::hardness, within(0, 100), "",
         "Gauge reading. A rubber without a modulus gets its modulus from 20 to 80 ShoreA (Gent 1958, good "
         "to 25 %)."),
    said("source", Dimension::text, any_value, "bench sheet", "Source of the numbers."),
    said("invented", Dimension::flag, any_value, "false", "Whether some of the numbers are invented."),
    said("from_memory", Dimension::flag, any_value, "false", "Whether some of the numbers are from memory."),
    said("after_use", Dimension::blocks, any_value, "",
      "What a stated use leaves of it. For people: no run uses it yet."),
    part(&S::thermal),
    one_of(&S::data, "", "law"));
};

template <>
struct Description<materials::BenchReadings>
{
  using S = materials::BenchReadings;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::ball_rebound, "ball_rebound")
      .as(Dimension::share, within(0, 1), "", "Ball rebound, read on the virtual bench."),
    member(&S::pulse_return, "pulse_return")
      .as(Dimension::share, within(0, 1), "", "Loop return of a 2000 N, 185 ms pulse, read on the virtual "
                                              "bench."),
    member(&S::asker_c, "asker_c")
      .as(Dimension::number, within(0, 100), "",
        "Asker C points on a thick block, read on the virtual bench."),
    member(&S::shore_a, "shore_a")
      .as(Dimension::number, within(0, 100), "",
        "Shore A points on a thick block, read on the virtual bench."));
};

template <>
struct Description<materials::StatedReadings>
{
  using S = materials::StatedReadings;
  static constexpr std::size_t left_out = 0;
  static constexpr auto members = std::tuple(
    member(&S::ball_rebound, "stated_ball_rebound")
      .as(Dimension::share, within(0, 1), "",
        "Ball rebound by its source; solemech-calibrate fits the loss to it."),
    member(&S::pulse_return, "stated_pulse_return")
      .as(Dimension::share, within(0, 1), "",
        "Return of the press pulse by its source; fitted in the same way."));
};

template <>
struct Description<materials::UseBand>
{
  using S = materials::UseBand;
  static constexpr std::size_t left_out = 0;
  static constexpr auto shown =
    std::tuple(member(&S::kind, "kind"), member(&S::use, "use"), member(&S::source, "source"));
  static constexpr auto members = std::tuple(
    said("kind", Dimension::choice, any_value, required,
      "Softening of the first cycles, or wear of a season.",
         "break-in|ageing"),
    said("use", Dimension::text, any_value, required, "How much use, such as 500 km."),
    member(&S::stiffness_from, "stiffness_from")
      .as(Dimension::share, above_to(0, 10), "100 %", "Least share of the fresh stiffness that is left."),
    member(&S::stiffness_to, "stiffness_to")
      .as(Dimension::share, above_to(0, 10), "100 %", "Greatest share of the fresh stiffness that is left."),
    member(&S::return_from, "return_from")
      .as(Dimension::share, above_to(0, 10), "100 %", "Least share of the fresh energy return that is left."),
    member(&S::return_to, "return_to")
      .as(Dimension::share, above_to(0, 10), "100 %",
        "Greatest share of the fresh energy return that is left."),
    said("source", Dimension::text, any_value, required, "Source of the band."));
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
