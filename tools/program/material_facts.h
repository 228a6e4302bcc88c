// SPDX-License-Identifier: Apache-2.0
// What a bench person wants to know of a material, worked out from its data.
#pragma once

#include "materials/material.h"

#include <optional>
#include <string>

namespace solemech::tools
{
/// Young's modulus of a slow, small pull at the reference temperature [Pa]: of a foam network and cell gas
/// together, of a rubber 3 mu, of a plate its modulus in the plane.
double slow_modulus(const materials::Material &material);

/// What a gauge reads on a thick block of a foam or rubber [points]: the stored reading of the virtual bench;
/// of a gauge that it was not read with, the tip on an elastic half-space of its slow modulus and Poisson
/// ratio (Sneddon 1965), which leaves out the branches and reads a foam some five points low. A plate or film
/// has the hardness that its source states, on that scale; nothing for the rest.
/// @param scale  "AskerC", "ShoreA", "ShoreD" or "ShoreOO"
std::optional<double> gauge_points(const materials::Material &material, const std::string &scale);

/// Hardness as printed, on the scale that the material was read with or states: "55 AskerC", and with what
/// its source states where that is another number, "57 ShoreA (60)"; "-" for none.
std::string hardness_text(const materials::Material &material);

/// A return as printed: "64 %", with what the source states where that is another number, "64 % (50)"; "-"
/// for none.
/// @param read, stated  [-]; < 0: none
std::string return_text(double read, double stated);
} // namespace solemech::tools
