// SPDX-License-Identifier: Apache-2.0
// Laws of a layer of which only a share of the area is there: lugs, posts, perforations.
//   Foam keeps its law, every term scaled by the share s: a column of it carries s times what the whole one
//   does. Rubber and plates, whose sideways bulge matters, also lose hold on their neighbours: E becomes s E,
//   the bulk modulus K becomes s K^c (E/3)^(1-c) with a coupling c, an interpolation of our own. Posts far
//   apart (c = 0) pass no stress sideways (Poisson's ratio 0); posts that a hair separates (c near 1) meet at
//   once and act as the whole. c = 1 - gap/bulge: a square post in its cell has the gap 1/sqrt(s) - 1 over
//   its width, and bulges by nu times the squeeze.
#pragma once

#include "materials/foam.h"
#include "materials/isotropic_plate.h"
#include "materials/rubber.h"

#include <algorithm>
#include <cmath>

namespace solemech::materials
{
/// Squeeze of a lug under a blow [-] (common practice, no source).
inline constexpr double squeeze_of_posts = 0.2;

/// How far posts hold each other sideways, 0: not at all, 1: as the whole [-].
inline double coupling_of_posts(double share, double poisson_ratio)
{
  const double gap = 1 / std::sqrt(share) - 1, bulge = poisson_ratio * squeeze_of_posts;
  return gap < bulge ? 1 - gap / bulge : 0.0;
}

/// Shear and bulk modulus [Pa] of a layer of posts, from those of the whole.
inline Hencky moduli_of_posts(const Hencky &whole, double share)
{
  const auto   w = small_strain_constants(whole.shear_modulus, whole.bulk_modulus);
  const double c = share < 1 ? coupling_of_posts(share, w.poisson_ratio) : 1.0,
               young = share * w.youngs_modulus;
  const double bulk = share * std::pow(w.bulk_modulus, c) * std::pow(w.youngs_modulus / 3, 1 - c);
  return {3 * bulk * young / (9 * bulk - young), bulk};
}

inline Foam with_area_share(Foam foam, double share)
{
  for (auto &term : foam.network)
    term.shear_modulus *= share;
  foam.gas.closed_share *= share;
  foam.densification.modulus *= share;
  for (auto &branch : foam.branches)
    branch.shear_modulus *= share, branch.bulk_modulus *= share;
  return foam;
}

inline Rubber with_area_share(Rubber rubber, double share)
{
  const double shear = rubber.isochoric.shear_modulus();
  const auto   posts = moduli_of_posts({shear, rubber.volumetric.bulk_modulus}, share);
  const double factor = posts.shear_modulus / shear;
  for (double *c :
       {&rubber.isochoric.c10, &rubber.isochoric.c20, &rubber.isochoric.c30, &rubber.isochoric.c01})
    *c *= factor;
  rubber.volumetric.bulk_modulus = posts.bulk_modulus;
  for (auto &branch : rubber.branches)
    branch.shear_modulus *= factor;
  return rubber;
}

inline IsotropicPlate with_area_share(IsotropicPlate plate, double share)
{
  const auto posts = moduli_of_posts(plate.elastic, share);
  for (auto &branch : plate.branches)
  {
    branch.shear_modulus *= posts.shear_modulus / plate.elastic.shear_modulus;
    branch.bulk_modulus *= posts.bulk_modulus / plate.elastic.bulk_modulus;
  }
  plate.elastic = posts;
  return plate;
}
} // namespace solemech::materials
