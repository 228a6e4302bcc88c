// SPDX-License-Identifier: Apache-2.0
// How a material follows temperature: relaxation times by Arrhenius, a_T = exp[Ea/R (1/T - 1/T_ref)], moduli
// by a constant relative slope, exp[slope (T - T_ref)]. The sign of the slope comes with the material's
// source.
// Source: J.D. Ferry, Viscoelastic Properties of Polymers, ch. 11 (from memory); R from CODATA 2018.
#pragma once

#include "materials/errors.h"
#include "materials/material.h"

namespace solemech::materials
{
inline constexpr double molar_gas_constant = 8.314462618; ///< [J/(mol K)]

/// Factor on every relaxation time at `temperature` [K]. Throws InvalidParameter.
inline double time_shift(const ThermalData &data, double temperature)
{
  require(temperature >= 200 && temperature <= 400, "temperature", temperature, "kelvin from 200 to 400");
  require_positive("reference temperature", data.reference_temperature);
  require_not_negative("activation energy", data.activation_energy);
  return std::exp(data.activation_energy / molar_gas_constant *
                  (1 / temperature - 1 / data.reference_temperature));
}

/// Factor on every modulus at `temperature` [K]. Throws InvalidParameter.
inline double modulus_factor(const ThermalData &data, double temperature)
{
  require(temperature >= 200 && temperature <= 400, "temperature", temperature, "kelvin from 200 to 400");
  require(std::abs(data.modulus_per_kelvin) <= 0.1, "modulus per kelvin", data.modulus_per_kelvin,
          "a relative slope between -0.1 and 0.1 per kelvin");
  return std::exp(data.modulus_per_kelvin * (temperature - data.reference_temperature));
}
} // namespace solemech::materials
