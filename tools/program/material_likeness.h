// SPDX-License-Identifier: Apache-2.0
// Which library materials are nearest to a few numbers that somebody has read: "55 AskerC, 200 kg/m3, 48 %
// ball".
#pragma once

#include "materials/material.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
enum class Property { hardness, density, ball_rebound, pulse_return, modulus };

/// One number that is looked for.
struct Wanted
{
  Property    property = Property::hardness;
  double      value = 0; ///< points, [kg/m3], [-] or [Pa]
  std::string scale;     ///< of a hardness, "AskerC"
};

/// @throws UsageError with the item that was not understood and what is known
std::vector<Wanted> read_wanted(const std::string &text);

/// "55 AskerC", "48 % ball rebound"
std::string wanted_text(const Wanted &wanted);

/// The same of a material; nothing when its entry lacks it.
std::optional<double> property_of(const materials::Material &material, const Wanted &wanted);

/// "4 points harder", "12 % lighter", "no ball rebound known"; empty: the same, to what is printed.
std::string difference_text(const materials::Material &material, const Wanted &wanted);

struct Likeness
{
  const materials::Material *material = nullptr;
  double                     distance = 0; ///< root mean square of the differences, each over its scale [-]
};

/// What counts as a difference of 1. Assumed: about what a hand-held gauge, a scale with callipers and a ball
/// tell apart, and what a modulus from a hardness is good for.
namespace likeness_scale
{
constexpr double hardness = 5;         ///< [points]
constexpr double share = 0.05;         ///< of ball rebound and pulse return [-]
constexpr double density_ratio = 1.2;  ///< [-]
constexpr double modulus_ratio = 1.25; ///< [-]
constexpr double lacking = 3;          ///< difference that a number is worth that an entry lacks
} // namespace likeness_scale

/// All of them, nearest first.
std::vector<Likeness> by_likeness(const std::vector<materials::Material> &library,
                                  const std::vector<Wanted>              &wanted);
} // namespace solemech::tools
