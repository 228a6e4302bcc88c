// SPDX-License-Identifier: Apache-2.0
// From the data of a material to the element loops of a part.
#pragma once

#include "solver/case.h"
#include "solver/kernels/solid_kernel.h"

namespace solemech::solver
{
/// Kernel of a material at the surroundings of a case; a share of area below one (lugs) makes separate posts
/// (materials/area_share.h).
template <int dim = 2>
std::unique_ptr<SolidKernelOf<dim>> make_part_kernel(const materials::Material &material, double area_share,
                                                     const Case &input);

/// Small-strain modulus under lateral confinement, all branches elastic [Pa].
double stiffest_confined_modulus(const materials::Material &material, const Case &input);

/// Young's modulus at rest, gas included [Pa].
double equilibrium_modulus(const materials::Material &material, const Case &input);
} // namespace solemech::solver
