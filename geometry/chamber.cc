// SPDX-License-Identifier: Apache-2.0
#include "geometry/chamber.h"

#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
struct Station
{
  std::array<double, 3> N;      // quadratic shape functions of start, middle, end
  std::array<double, 3> dN;     // derivatives along s in [-1, 1]
  double                weight; // Gauss
};

std::array<Station, 3> gauss_stations()
{
  const double                far = std::sqrt(0.6);
  const std::array<double, 3> s{-far, 0.0, far}, weight{5.0 / 9, 8.0 / 9, 5.0 / 9};
  std::array<Station, 3>      stations;
  for (unsigned q = 0; q < 3; ++q)
    stations[q] = {.N = {s[q] * (s[q] - 1) / 2, 1 - s[q] * s[q], s[q] * (s[q] + 1) / 2},
                   .dN = {s[q] - 0.5, -2 * s[q], s[q] + 0.5},
                   .weight = weight[q]};
  return stations;
}
} // namespace

EdgeVolume edge_volume(const EdgeNodes &nodes, Section section)
{
  static const std::array<Station, 3> stations = gauss_stations();
  EdgeVolume                          edge;
  for (const auto &[N, dN, weight] : stations)
  {
    double r = 0, slope = 0; // slope = dz/ds
    for (unsigned a = 0; a < 3; ++a)
    {
      r += N[a] * nodes[a][0];
      slope += dN[a] * nodes[a][1];
    }
    // integrand A(r) dz with A = pi r^2 or r, and its derivatives
    const bool   round = section == Section::axisymmetric;
    const double A = round ? std::numbers::pi * r * r : r;
    const double dA = round ? 2 * std::numbers::pi * r : 1;
    const double ddA = round ? 2 * std::numbers::pi : 0;

    edge.volume += weight * A * slope;
    for (unsigned a = 0; a < 3; ++a)
    {
      edge.gradient[2 * a] += weight * dA * N[a] * slope;
      edge.gradient[2 * a + 1] += weight * A * dN[a];
      for (unsigned b = 0; b < 3; ++b)
      {
        edge.hessian[2 * a][2 * b] += weight * ddA * slope * (N[a] * N[b]);
        edge.hessian[2 * a][2 * b + 1] += weight * dA * N[a] * dN[b];
        edge.hessian[2 * b + 1][2 * a] += weight * dA * N[a] * dN[b];
      }
    }
  }
  return edge;
}

double enclosed_volume(std::span<const EdgeNodes> edges, Section section)
{
  double sum = 0;
  for (const EdgeNodes &nodes : edges)
    sum += edge_volume(nodes, section).volume;
  return sum;
}
} // namespace solemech::geometry
