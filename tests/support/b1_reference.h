// SPDX-License-Identifier: Apache-2.0
// The bench problem B1 and its readings as three independent codes found them, one of the three written with
// a general-purpose finite-element library. The spread is what the three disagree by. B1: foam cylinder, base
// bonded, side free, under a rigid, frictionless, flat weight with a rounded edge. Network of one term, two
// relaxing branches (moduli relative to the equilibrium network), no cell gas, no densification, no slip.
// Contact ends at force zero, extrapolated from the last two points in contact. The weight's side wall counts
// as part of its surface.
#pragma once

#include <array>

namespace solemech::tests::b1
{
// The problem.
inline constexpr double                radius = 40e-3, height = 25e-3;           ///< of the foam [m]
inline constexpr double                density = 200;                            ///< [kg/m3]
inline constexpr double                mu = 0.60e6, alpha = 8, beta = 0.125;     ///< network: [Pa], [-], [-]
inline constexpr std::array<double, 2> share{0.30, 0.20}, time{2e-3, 20e-3};     ///< branches: [-], [s]
inline constexpr double                tup_radius = 22.5e-3, edge_radius = 2e-3; ///< [m]
inline constexpr double mass = 8.5, gravity = 9.81, energy = 5.0; ///< [kg], [m/s2], at first touch [J]

/// A reading and what the three codes disagree by.
struct Reading
{
  double value, spread;
};

// With both branches. A stress wave leaves a ripple of about 3 N on the flat top of the force, so the peak is
// read from a polynomial of fourth degree, fitted by least squares to the samples within 4 ms of the highest
// one.
inline constexpr Reading smoothed_peak_force{1104.5, 1.5};                 ///< [N]
inline constexpr Reading peak_compression{9.235e-3, 0.003e-3};             ///< rigid contact [m]
inline constexpr Reading contact_time{27.34e-3, 0.03e-3};                  ///< [s]
inline constexpr Reading rebound_speed{0.8022, 0.0003};                    ///< [m/s]
inline constexpr Reading return_by_speed{0.547, 0.0007};                   ///< [-]
inline constexpr double  return_by_height = 0.522, return_by_loop = 0.586; ///< [-], to the digit given
inline constexpr double  smoothing_half_width = 4e-3;                      ///< [s]

// At contact loss [J], [m]; the balance closes to 0.01 %.
inline constexpr double tup_energy = 2.735, foam_kinetic = 0.0007, foam_stored = 0.351, dissipated = 2.039,
                        gravity_work = 0.126, loss_compression = 1.50e-3;

// Force at given times, with both branches; rounded to 1 N.
inline constexpr std::array<double, 12> force_times{1e-3,    2e-3,  3e-3,    5e-3,  7.5e-3,  10e-3,
                                                    12.5e-3, 15e-3, 17.5e-3, 20e-3, 22.5e-3, 25e-3}; ///< [s]
inline constexpr std::array<double, 12> forces{173,  327,  471, 716, 942, 1077,
                                               1099, 1007, 833, 621, 402, 185}; ///< [N]

// Without the branches.
inline constexpr Reading elastic_smoothed_peak_force{996.5, 1};         ///< [N]
inline constexpr Reading elastic_peak_compression{11.804e-3, 0.003e-3}; ///< [m]
inline constexpr Reading elastic_contact_time{33.55e-3, 0.05e-3};       ///< [s]
inline constexpr Reading elastic_return_by_speed{0.998, 0.001};         ///< [-]

// Pressed slowly without branches: force at given compressions, relative spread 0.05 %.
inline constexpr std::array<double, 5> slow_compressions{2.5e-3, 5e-3, 7.5e-3, 10e-3, 12.5e-3}; ///< [m]
inline constexpr std::array<double, 5> slow_forces{246.25, 446.60, 628.29, 824.41, 1075.4};     ///< [N]
inline constexpr double                slow_relative_spread = 0.0005;
} // namespace solemech::tests::b1
