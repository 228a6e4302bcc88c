// SPDX-License-Identifier: Apache-2.0
// Friction of rubber on a court, by nominal pressure, slip speed and temperature of the face:
//   mu = mu_ref state [(p + p0)/(p_ref + p0)]^-m [(a_T v + v0)/(v_ref + v0)]^n exp[slope (T - T_ref)].
// p0 and v0 keep it finite and smooth where contact or slip begins; m < 1, so that the traction mu p always
// rises with p. m = 1/3 for one layer of Hertz asperities (A. Schallamach, Proc. Phys. Soc. B 65 (1952)), 1/9
// and 1/27 for two and three nested ones (J.F. Archard, Proc. R. Soc. A 243 (1957)). a_T by K.A. Grosch,
// Proc. R. Soc. A 274 (1963): speed and temperature act as one, log10 a_T = -8.86 dT/(101.5 + dT). All from
// memory.
#pragma once

#include "materials/errors.h"

#include <algorithm>
#include <array>

namespace solemech::materials
{
/// Factor on the slip speed at dT [K] above the rubber's standard temperature (some 50 K above its glass
/// transition).
inline double friction_speed_shift(double above_standard)
{
  require(above_standard > -90 && above_standard < 300, "kelvin above the standard temperature",
          above_standard, "-90 to 300 K");
  return std::pow(10.0, -8.86 * above_standard / (101.5 + above_standard));
}

struct FrictionData
{
  double mu_ref = 0;                 ///< at reference pressure, speed and temperature on the clean court [-]
  double state = 1;                  ///< factor of the state of the court's surface [-]
  double reference_pressure = 0.3e6; ///< [Pa]
  double pressure_exponent = 0;      ///< m [-]
  double pressure_onset = 10e3;      ///< p0 [Pa]
  double reference_speed = 0.3;      ///< [m/s]
  double speed_exponent = 0;         ///< n [-]
  double speed_onset = 1e-3;         ///< v0 [m/s]
  double reference_temperature = 296.15; ///< [K]
  double per_kelvin = 0;                 ///< slope [1/K]
  double standard_temperature = 0;       ///< of the rubber [K]; 0: temperature does not shift the speed
};

/// Coefficient and its slopes for tangents.
struct FrictionValue
{
  double mu = 0;             ///< [-]
  double by_pressure = 0;    ///< d mu/dp [1/Pa]
  double by_speed = 0;       ///< d mu/dv [s/m]
  double by_temperature = 0; ///< d mu/dT [1/K]
};

class CourtFriction
{
public:
  /// Throws InvalidParameter: mu_ref 0 to 3, state above 0 to 2, m 0 to below 1, n -0.5 to 0.5, slope within
  /// 5 %/K, references and onsets above 0.
  explicit CourtFriction(const FrictionData &data) : d_(data)
  {
    require(d_.mu_ref >= 0 && d_.mu_ref <= 3, "friction coefficient", d_.mu_ref, "a number from 0 to 3");
    require(d_.state > 0 && d_.state <= 2, "factor of the surface state", d_.state, "a number above 0 to 2");
    require(d_.pressure_exponent >= 0 && d_.pressure_exponent < 1, "pressure exponent", d_.pressure_exponent,
            "a number from 0 to below 1");
    require(std::abs(d_.speed_exponent) <= 0.5, "speed exponent", d_.speed_exponent,
            "a number from -0.5 to 0.5");
    require(std::abs(d_.per_kelvin) <= 0.05, "friction per kelvin", d_.per_kelvin,
            "-0.05 to 0.05 per kelvin");
    require_positive("reference pressure", d_.reference_pressure);
    require_positive("pressure onset", d_.pressure_onset);
    require_positive("reference speed", d_.reference_speed);
    require_positive("speed onset", d_.speed_onset);
    require(d_.reference_temperature >= 200 && d_.reference_temperature <= 400, "reference temperature",
            d_.reference_temperature, "kelvin from 200 to 400");
    require(d_.standard_temperature == 0 ||
              (d_.standard_temperature >= 150 && d_.standard_temperature <= 350),
            "standard temperature", d_.standard_temperature, "0, or kelvin from 150 to 350");
  }

  /// At a nominal pressure [Pa] (apart: as at 0), slip speed [m/s] and temperature of the face [K].
  FrictionValue at(double pressure, double speed, double temperature) const
  {
    const double  p = std::max(pressure, 0.0) + d_.pressure_onset, v = std::abs(speed);
    const double  shift = relative_shift(temperature), reduced = shift * v + d_.speed_onset;
    FrictionValue out;
    out.mu = d_.mu_ref * d_.state *
             std::pow(p / (d_.reference_pressure + d_.pressure_onset), -d_.pressure_exponent) *
             std::pow(reduced / (d_.reference_speed + d_.speed_onset), d_.speed_exponent) *
             std::exp(d_.per_kelvin * (temperature - d_.reference_temperature));
    out.by_pressure = pressure > 0 ? -d_.pressure_exponent / p * out.mu : 0.0;
    const double by_log_speed = d_.speed_exponent * out.mu / reduced;
    out.by_speed = by_log_speed * shift * (speed < 0 ? -1 : 1);
    out.by_temperature = d_.per_kelvin * out.mu + by_log_speed * v * shift * shift_slope(temperature);
    return out;
  }

  /// Frictional traction mu p [Pa] and its slope by the pressure [-], which is never negative.
  std::array<double, 2> traction(double pressure, double speed, double temperature) const
  {
    if (pressure <= 0)
      return {0, 0};
    const auto here = at(pressure, speed, temperature);
    return {here.mu * pressure, here.mu + pressure * here.by_pressure};
  }

  const FrictionData &data() const { return d_; }

private:
  FrictionData d_;

  /// a_T over a_T at the reference temperature, where the law is the data's own.
  double relative_shift(double temperature) const
  {
    if (d_.standard_temperature == 0)
      return 1;
    return friction_speed_shift(temperature - d_.standard_temperature) /
           friction_speed_shift(d_.reference_temperature - d_.standard_temperature);
  }
  /// d ln(a_T)/dT [1/K].
  double shift_slope(double temperature) const
  {
    if (d_.standard_temperature == 0)
      return 0;
    const double above = 101.5 + temperature - d_.standard_temperature;
    return -8.86 * std::log(10.0) * 101.5 / (above * above);
  }
};
} // namespace solemech::materials
