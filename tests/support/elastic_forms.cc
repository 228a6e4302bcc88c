// SPDX-License-Identifier: Apache-2.0
// Elastic bodies of closed_forms.h. S.P. Timoshenko & J.N. Goodier, Theory of Elasticity; Timoshenko &
// Woinowsky-Krieger, Theory of Plates and Shells; K.L. Johnson, Contact Mechanics (from memory).
#include "tests/support/closed_forms.h"

#include <cmath>
#include <numbers>

namespace solemech::tests
{
using std::numbers::pi;

LameState lame_cylinder(double a, double b, double p, double E, double nu, double r, bool plane_strain)
{
  const double scale = p * a * a / (b * b - a * a), ratio = b * b / (r * r);
  const double radial = scale * (1 - ratio), hoop = scale * (1 + ratio);
  const double axial = plane_strain ? nu * (radial + hoop) : 0;
  return {radial, hoop, r / E * (hoop - nu * (radial + axial))};
}

LameState lame_sphere(double a, double b, double p, double E, double nu, double r)
{
  const double scale = p * a * a * a / (b * b * b - a * a * a), ratio = b * b * b / (r * r * r);
  const double radial = scale * (1 - ratio), hoop = scale * (1 + ratio / 2);
  return {radial, hoop, r / E * ((1 - nu) * hoop - nu * radial)};
}

Contact hertz_contact(double E, double nu, double R, double sink)
{
  const double modulus = E / (1 - nu * nu);
  const double force = 4. / 3 * modulus * std::sqrt(R) * std::pow(sink, 1.5), radius = std::sqrt(R * sink);
  return {force, radius, 1.5 * force / (pi * radius * radius)};
}

Impact hertz_impact(double E, double nu, double R, double m, double v)
{
  const double modulus = E / (1 - nu * nu);
  const double sink = std::pow(15 * m * v * v / (16 * modulus * std::sqrt(R)), 0.4);
  // Contact time 2 sink/v times the integral of (1 - x^2.5)^-1/2 = sqrt(pi) Gamma(1.4)/Gamma(0.9).
  const double half_time = std::sqrt(pi) * std::tgamma(1.4) / std::tgamma(0.9) * sink / v;
  return {hertz_contact(E, nu, R, sink).force, sink, half_time, 2 * half_time, 1};
}

double plate_stiffness(double E, double nu, double t)
{
  return E * t * t * t / (12 * (1 - nu * nu));
}

double plate_centre_uniform(double E, double nu, double t, double a, double q, Rim rim)
{
  const double clamped = q * std::pow(a, 4) / (64 * plate_stiffness(E, nu, t));
  return rim == Rim::clamped ? clamped : (5 + nu) / (1 + nu) * clamped;
}

double plate_centre_point(double E, double nu, double t, double a, double P, Rim rim)
{
  const double clamped = P * a * a / (16 * pi * plate_stiffness(E, nu, t));
  return rim == Rim::clamped ? clamped : (3 + nu) / (1 + nu) * clamped;
}

double plate_on_springs(double D, double k, double P)
{
  return P / (8 * std::sqrt(k * D));
}

double bonded_disc_ratio(double diameter, double height)
{
  const double shape = diameter / (4 * height);
  return 1 + 2 * shape * shape;
}

double confined_modulus(double E, double nu)
{
  return E * (1 - nu) / ((1 + nu) * (1 - 2 * nu));
}
} // namespace solemech::tests
