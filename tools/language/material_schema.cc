// SPDX-License-Identifier: Apache-2.0
// The table of all entries of material blocks.
#include "tools/language/material_reader.h"

namespace solemech::materials
{
namespace
{
using D = Dimension;

// Bulk modulus of filled rubber: 1 to 2 GPa (from memory); the lower end keeps the mixed element well
// conditioned.
const Entry entries[] = {
  {"material", "name", D::text, any_value, required, "Address of the material in layers."},
  {"material", "from", D::text, any_value, "", "Known material to start from; the other entries change it."},
  {"material", "title", D::text, any_value, "", "One line for people."},
  {"material", "family", D::choice, any_value, "foam", "What it is in the trade.",
   "foam|rubber|plate|film|insert|board"},
  {"material", "law", D::choice, any_value, "",
   "How it is computed; by itself foam for foams, rubber for rubber and film, plate for the rest.",
   "foam|rubber|plate"},
  {"material", "density", D::density, above_to(0, 25000), required,
   "Mass per volume of the material as built in."},
  {"material", "hardness", D::hardness, within(0, 100), "",
   "Gauge reading; a rubber without a modulus takes it from 20 to 80 ShoreA (Gent 1958, good to 25 %)."},
  {"material", "source", D::text, any_value, "bench sheet", "Where the numbers come from."},

  {"material", "shear_modulus", D::pressure, above_to(0, 1e11), "",
   "Small-strain shear modulus of network or rubber.", "", "youngs_modulus"},
  {"material", "exponent", D::number, within(-50, 50), "2",
   "Exponent alpha of a foam with one network term, not 0."},
  {"material", "poisson", D::number, within(0, 0.499), "0.1",
   "Poisson ratio of the foam network or of a plate (plates up to 0.45).", "", "volumetric_exponent"},
  {"material", "volumetric_exponent", D::number, within(0, 1000), "",
   "Exponent beta = nu/(1 - 2 nu) of the foam network, instead of poisson.", "", "poisson"},
  {"material", "network", D::blocks, any_value, "", "Several network terms instead of one.", "",
   "shear_modulus"},
  {"material", "relative_density", D::share, within(0, 0.95), "0",
   "Density of the foam over that of its polymer; 0: no cell gas, no densification.", "", "polymer_density"},
  {"material", "polymer_density", D::density, above_to(0, 25000), "",
   "Density of the polymer without cells, instead of relative_density.", "", "relative_density"},
  {"material", "closed_cells", D::share, within(0, 1), "1", "Share of the cells that are still closed."},
  {"material", "gas_exponent", D::number, within(1, 1.67), "1",
   "Polytropic exponent of the cell gas; 1: isothermal."},
  {"material", "densification_modulus", D::pressure, within(0, 1e9), "0 MPa",
   "Scale of the pressure that rises as the cells close up."},
  {"material", "densification_exponent", D::number, above_to(1, 20), "3", "How steeply that pressure rises."},
  {"material", "relaxing", D::blocks, any_value, "", "Branches that relax with time."},
  {"material", "slipping", D::blocks, any_value, "", "Branches that slip, at any speed."},
  {"material", "recovery_time", D::time, above_to(0, 1e9), "5 s",
   "Time in which slipping branches come back at rest."},

  {"material", "youngs_modulus", D::pressure, above_to(0, 1e12), "",
   "Young's modulus of a plate, board, rubber or film.", "", "shear_modulus"},
  {"material", "c10", D::pressure, within(0, 1e10), "",
   "First Yeoh or Mooney-Rivlin coefficient of a rubber."},
  {"material", "c20", D::pressure, within(-1e10, 1e10), "0 MPa", "Second Yeoh coefficient of a rubber."},
  {"material", "c30", D::pressure, within(-1e10, 1e10), "0 MPa", "Third Yeoh coefficient of a rubber."},
  {"material", "c01", D::pressure, within(-1e10, 1e10), "0 MPa",
   "Second Mooney-Rivlin coefficient of a rubber."},
  {"material", "bulk_modulus", D::pressure, above_to(0, 1e12), "1 GPa", "Bulk modulus of a rubber or film."},

  {"material", "reference_temperature", D::temperature, within(173.15, 473.15), "23 °C",
   "Temperature at which the numbers hold."},
  {"material", "activation_energy", D::molar_energy, within(0, 1e6), "0 kJ/mol",
   "Arrhenius shift of the relaxation times; 0: none."},
  {"material", "modulus_per_kelvin", D::per_kelvin, within(-0.1, 0.1), "0 %/K",
   "Relative change of the moduli per kelvin; negative softens when warm."},
  {"material", "ball_rebound", D::share, within(0, 1), "", "Ball rebound that the virtual bench read."},
  {"material", "pulse_return", D::share, within(0, 1), "",
   "Loop return of a 2000 N, 185 ms pulse on the virtual bench."},

  {"material.network", "shear_modulus", D::pressure, above_to(0, 1e11), required,
   "Shear modulus of the term."},
  {"material.network", "exponent", D::number, within(-50, 50), "2", "Exponent alpha of the term, not 0."},
  {"material.network", "poisson", D::number, within(0, 0.499), "0.1", "Poisson ratio of the term.", "",
   "volumetric_exponent"},
  {"material.network", "volumetric_exponent", D::number, within(0, 1000), "", "Exponent beta of the term.",
   "", "poisson"},
  {"material.relaxing", "share", D::share, within(0, 1000), required,
   "Modulus of the branch relative to the equilibrium network."},
  {"material.relaxing", "time", D::time, above_to(0, 1e12), required,
   "Relaxation time at the reference temperature."},
  {"material.slipping", "share", D::share, within(0, 1000), required,
   "Modulus of the branch relative to the equilibrium network."},
  {"material.slipping", "cap", D::share, above_to(0, 10), required,
   "Elastic log-strain norm at which it slips."},
};
} // namespace

std::span<const Entry> material_entries()
{
  return entries;
}
} // namespace solemech::materials
