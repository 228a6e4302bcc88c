// SPDX-License-Identifier: Apache-2.0
// A rigid, frictionless punch or ball on an elastic layer of thickness h (small strain), by the integral
// equation of the layer: w(t) - (1/pi) int_0^1 [K(t + s) + K(t - s)] w(s) ds = f(t), where K is the cosine
// transform of what the layer lacks to a half-space. Exact for a wide layer; Gauss quadrature, some 5 digits.
// N.A. Lebedev & I.S. Ufliand 1958; W.C. Hayes et al., J. Biomechanics 5 (1972) (method from memory).
#pragma once

namespace solemech::tests
{
enum class LayerBase { bonded, sliding };

/// Force of a flat punch of radius a over its force 2 a E d/(1 - nu^2) on a half-space [-].
double flat_punch_factor(double a_over_h, double nu, LayerBase base);

struct BallOnLayer
{
  double sink, force;
}; ///< [m], [N]
/// Ball of radius R in contact out to the radius a: sink and force. The profile is the parabola r^2/(2 R).
BallOnLayer ball_on_layer(double E, double nu, double R, double h, double a, LayerBase base);
} // namespace solemech::tests
