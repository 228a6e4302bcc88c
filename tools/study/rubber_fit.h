// SPDX-License-Identifier: Apache-2.0
// Rubber coefficients from stretch-stress tables: linear least squares of the nominal stress (QR), for Yeoh's
// cubic or for Mooney and Rivlin's pair, and what such a fit must not be used for.
//
// Source of the forms: materials/yeoh.h. That pull tests alone give a false second coefficient is textbook
// knowledge (e.g. L.R.G. Treloar, The Physics of Rubber Elasticity, from memory); the tests show it on a
// published table.
#pragma once

#include "materials/yeoh.h"

#include <string>
#include <vector>

namespace solemech::settle
{
enum class Pull { uniaxial, pure_shear, equibiaxial };

struct StretchPoint
{
  Pull   pull = Pull::uniaxial;
  double stretch = 1;        ///< along the pull; below 1 squeezed
  double nominal_stress = 0; ///< force over the area at rest [Pa]
};

enum class RubberForm { neo_hooke, mooney, yeoh };

struct RubberFit
{
  materials::IsochoricRubber rubber;
  double                     misfit = 0;                              ///< root mean square [Pa]
  double                     least_stretch = 1, greatest_stretch = 1; ///< of the points
  std::vector<std::string>   warnings;                                ///< sentences
};

/// Unweighted least squares on nominal stress.
/// @throws std::invalid_argument naming the point for a stretch that is not positive or a value that is not
/// finite, and for fewer different stretches than coefficients
RubberFit fit_rubber(const std::vector<StretchPoint> &points, RubberForm form);
} // namespace solemech::settle
