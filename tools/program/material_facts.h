// SPDX-License-Identifier: Apache-2.0
// What a bench person wants to know of a material, worked out from its data.
#pragma once

#include "materials/material.h"

#include <string>

namespace solemech::tools
{
/// Young's modulus of a slow, small pull at the reference temperature [Pa]: of a foam network and cell gas
/// together, of a rubber 3 mu, of a plate its modulus in the plane.
double slow_modulus(const materials::Material &material);

/// Gauge reading as printed: the one stored in the library, else for a foam the Asker C reading of a rigid
/// sphere on an elastic half-space of its slow modulus and Poisson ratio (Sneddon 1965); "-" for the rest.
std::string hardness_text(const materials::Material &material);
} // namespace solemech::tools
