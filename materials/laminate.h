// SPDX-License-Identifier: Apache-2.0
// A laminate of plies as one layer of quadratic elements. Its stiffnesses by classical laminate theory are
// A = sum Q t, B = sum Q t z, D = sum Q (t^3/12 + t z^2); an element has three Gauss points through the
// thickness, and three sets of moduli, one a point, give exactly these three moments, however many plies
// there are. Source: R.M. Jones, Mechanics of Composite Materials, ch. 4 (from memory); the three sets by
// matching moments.
#pragma once

#include "materials/branch.h"
#include "materials/orthotropic.h"

#include <vector>

namespace solemech::materials
{
/// Plies from the top, the foot side, down.
using Plies = std::vector<Ply>;

/// Moments of the in-plane moduli over the thickness, about its middle: 11, 22, 66, 12, 16, 26.
struct LaminateStiffness
{
  double      thickness = 0;                    ///< [m]
  PlaneModuli stretch{}, coupling{}, bending{}; ///< A [N/m], B [N], D [N m]
};

/// Throws InvalidParameter.
inline LaminateStiffness laminate_stiffness(const Plies &plies)
{
  require(!plies.empty(), "number of plies", 0, "at least one");
  LaminateStiffness sum;
  for (const auto &ply : plies)
  {
    check(ply);
    sum.thickness += ply.thickness;
  }
  double top = 0.5 * sum.thickness;
  for (const auto &ply : plies)
  {
    const double t = ply.thickness, z = top - 0.5 * t;
    const auto   q = plane_moduli(ply);
    for (std::size_t i = 0; i < q.size(); ++i)
    {
      sum.stretch[i] += q[i] * t;
      sum.coupling[i] += q[i] * t * z;
      sum.bending[i] += q[i] * (t * t * t / 12 + t * z * z);
    }
    top -= t;
  }
  return sum;
}

/// Curvature of a free narrow strip along x: its bending stiffness is 1/d11, less than D11 [N m].
inline double narrow_strip_stiffness(const LaminateStiffness &laminate)
{
  const auto &[d11, d22, d66, d12, d16, d26] = laminate.bending;
  const double minor = d22 * d66 - d26 * d26;
  return d11 - (d12 * (d12 * d66 - d26 * d16) - d16 * (d12 * d26 - d22 * d16)) / minor;
}

/// A law in axes of the material, at each of the three Gauss points through the thickness.
struct Laminate
{
  std::array<AxesModuli, 3> moduli{}; ///< bottom, middle, top
  std::vector<Branch>       branches; ///< none

  const AxesModuli &at(unsigned level) const { return moduli[level]; }
};

/// Throws InvalidParameter, also where so much of the stiffness lies at the faces that three points do not
/// render it.
inline Laminate make_laminate(const Plies &plies)
{
  const auto   whole = laminate_stiffness(plies);
  const double t = whole.thickness;
  // Of fibres across the thickness nothing is told: it is sheared as the plane is and gives way as across the
  // fibres; plies in series.
  double sheared = 0, squeezed = 0;
  for (const auto &ply : plies)
    sheared += ply.thickness / t / ply.shear_modulus, squeezed += ply.thickness / t / ply.modulus_across;
  // With points at 0 and +-sqrt(3/5) of half the thickness and weights 8/9 and 5/9, a mean m0 = A/t, a first
  // moment m1 = 4 B/t^2 and a second one m2 = 12 D/t^3 (of constant moduli: m0, 0, m0) are those of m2 -+ d
  // at the faces and (9 m0 - 5 m2)/4 in the middle.
  Laminate                          laminate;
  constexpr std::array<unsigned, 6> place{entry_of(0, 0), entry_of(1, 1), entry_of(3, 3),
                                          entry_of(0, 1), entry_of(0, 3), entry_of(1, 3)};
  for (std::size_t i = 0; i < place.size(); ++i)
  {
    const double m0 = whole.stretch[i] / t, m1 = 4 * whole.coupling[i] / (t * t),
                 m2 = 12 * whole.bending[i] / (t * t * t), d = 0.9 * m1 / std::sqrt(0.6);
    laminate.moduli[0][place[i]] = m2 - d;
    laminate.moduli[1][place[i]] = (9 * m0 - 5 * m2) / 4;
    laminate.moduli[2][place[i]] = m2 + d;
  }
  for (auto &moduli : laminate.moduli)
  {
    moduli[entry_of(2, 2)] = 1 / squeezed;
    moduli[entry_of(4, 4)] = moduli[entry_of(5, 5)] = 1 / sheared;
    const auto   in_plane = [&](unsigned i, unsigned j) { return moduli[entry_of(i, j)]; };
    const double minor = in_plane(0, 0) * in_plane(1, 1) - in_plane(0, 1) * in_plane(0, 1);
    const double whole_minor = minor * in_plane(3, 3) - in_plane(0, 0) * in_plane(1, 3) * in_plane(1, 3) -
                               in_plane(1, 1) * in_plane(0, 3) * in_plane(0, 3) +
                               2 * in_plane(0, 1) * in_plane(0, 3) * in_plane(1, 3);
    require(in_plane(0, 0) > 0 && minor > 0 && whole_minor > 0, "stiffness in the middle of a laminate",
            in_plane(0, 0),
            "more than 0: so much of it lies at the faces that the laminate wants two layers");
  }
  return laminate;
}
} // namespace solemech::materials
