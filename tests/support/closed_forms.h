// SPDX-License-Identifier: Apache-2.0
// Textbook solutions the program is held against: impacts of a mass on springs, dampers, foam and gas; thick
// cylinder and sphere; ball on a half-space; circular plates; bonded disc; plate on springs. Formulas from
// standard handbooks (named at each); numbers worked with them stand in tests/unit/support. SI throughout.
#pragma once

namespace solemech::tests
{
// --- Impacts -----------------------------------------------------------------------------------------------

struct Impact
{
  double peak_force = 0;       ///< [N]
  double peak_compression = 0; ///< [m]
  double time_of_peak = 0;     ///< of the compression [s]
  double contact_time = 0;     ///< until the force is zero [s]
  double restitution = 0;      ///< speed ratio e [-]; the return by speed is e^2
};

/// Mass m [kg] on a linear spring k [N/m], touch speed v [m/s], gravity g [m/s2] acting throughout:
/// F = m g + sqrt((m g)^2 + m k v^2).
Impact spring_impact(double m, double k, double v, double g);

/// Spring and damper c [N s/m] side by side (Kelvin-Voigt), no gravity, contact ends at force zero.
Impact kelvin_voigt_impact(double m, double k, double c, double v);

/// Spring and damper in line (Maxwell), no gravity.
Impact maxwell_impact(double m, double k, double c, double v);

/// Spring k_inf beside a Maxwell branch k1, tau (standard linear solid), no gravity: sum of the three
/// exponentials of m tau s^3 + m s^2 + (k_inf + k1) tau s + k_inf = 0.
Impact standard_linear_solid_impact(double m, double k_inf, double k1, double tau, double v);

/// Loss tangent of the standard linear solid at the angular frequency w [rad/s].
double standard_linear_solid_loss_tangent(double k_inf, double k1, double tau, double w);

/// Peak force [N] of 20 kg falling 55 mm on 2000 N/mm as a force sensor records it, raw and after the
/// low-pass of EN 14808 (second-order Butterworth, -3 dB at 120 Hz), integrated step by step.
struct ForceReductionReference
{
  double raw, filtered;
};
ForceReductionReference force_reduction_reference(double g);

// --- Foam and gas ------------------------------------------------------------------------------------------

/// One-term Ogden-Hill foam, small-strain Poisson ratio nu. Compressive nominal stress [Pa] at the nominal
/// strain eps: free sides (lateral stretch l^-nu) and confined; energy per volume with free sides [J/m3].
double foam_stress_free(double mu, double alpha, double nu, double eps);
double foam_stress_confined(double mu, double alpha, double nu, double eps);
double foam_energy_free(double mu, double alpha, double nu, double eps);
double foam_shear_stress(double mu, double alpha, double gamma); ///< simple shear, true stress [Pa]
double foam_hydrostatic_pressure(double mu, double alpha, double nu, double J); ///< true pressure [Pa]

struct ColumnPeak
{
  double strain, compression, force;
}; ///< [-], [m], [N]
/// Greatest compression of a massless foam column of that law under a falling mass by energy balance,
/// A H W = m g (h + H eps); `gravity_in_contact` false leaves out the H eps.
ColumnPeak foam_column_drop(double mu, double alpha, double nu, double area, double height, double m,
                            double drop_height, double g, bool gravity_in_contact = true);

/// Gas in closed cells at no lateral strain: p0 [((1 - R)/(1 - eps - R))^n - 1] [Pa] (Gibson & Ashby 1997).
double cell_gas_stress(double p0, double relative_density, double eps, double n);

/// Gas column of area A, height H at gauge pressure p_g, pressed by x: force A (p - p_a) [N] and work [J].
double gas_column_force(double area, double height, double gauge, double atmosphere, double n, double x);
double gas_column_work(double area, double height, double gauge, double atmosphere, double n, double x);
/// Its greatest compression [m] under a falling mass, by energy balance with gravity.
double gas_column_drop(double area, double height, double gauge, double atmosphere, double n, double m,
                       double drop_height, double g);
/// Net return when the gas is compressed adiabatically by x, cools to the wall and expands again [-].
double gas_column_return_after_cooling(double area, double height, double gauge, double atmosphere,
                                       double gamma, double x);

// --- Elastic bodies (small strain) -------------------------------------------------------------------------

struct LameState
{
  double radial_stress, hoop_stress, displacement;
}; ///< [Pa], [Pa], [m]
/// Thick cylinder, inner radius a, outer b, inner pressure p, at radius r; plane strain or plane stress.
LameState lame_cylinder(double a, double b, double p, double E, double nu, double r, bool plane_strain);
LameState lame_sphere(double a, double b, double p, double E, double nu, double r);

struct Contact
{
  double force, radius, peak_pressure;
}; ///< [N], [m], [Pa]
Contact hertz_contact(double E, double nu, double R, double sink);
/// Rigid ball of mass m and radius R striking a half-space: the static law carried through the impact.
Impact hertz_impact(double E, double nu, double R, double m, double v);

enum class Rim { clamped, supported };
double plate_stiffness(double E, double nu, double t);                                   ///< D [N m]
double plate_centre_uniform(double E, double nu, double t, double a, double q, Rim rim); ///< [m] under q [Pa]
double plate_centre_point(double E, double nu, double t, double a, double P, Rim rim);   ///< [m] under P [N]
/// Infinite plate on springs of k [Pa/m] under a point load P: deflection [m].
double plate_on_springs(double D, double k, double P);

/// Apparent over Young's modulus of a bonded rubber disc of diameter D and height h, 1 + 2 S^2, S = D/(4 h).
/// Gent & Lindley 1959 (from memory); for nu -> 0.5.
double bonded_disc_ratio(double diameter, double height);

/// Confined (oedometric) modulus E (1 - nu)/[(1 + nu)(1 - 2 nu)].
double confined_modulus(double E, double nu);
} // namespace solemech::tests
