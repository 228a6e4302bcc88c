// SPDX-License-Identifier: Apache-2.0
// What a sole measures and weighs as described, before anything is run.
#pragma once

#include "geometry/sole/sole_body.h"
#include "solver/sole.h"
#include "tools/language/blocks.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// One layer with what it fills of others.
struct SolePart
{
  std::string layer, material;
  double      least_thickness = 0, greatest_thickness = 0; ///< [m]
  double      area = 0;                                    ///< of its own outline [m2]
  double      mass = 0; ///< of its material, wherever it fills the sole [kg]
};

constexpr auto block_of(const SolePart *)
{
  using S = SolePart;
  return blocks::block<S>(
    "part", "one layer, with what it fills of others", blocks::field(&S::layer, "layer", "its name"),
    blocks::field(&S::material, "material", "its material"),
    blocks::field(&S::least_thickness, "least_thickness", "where it is thinnest", "m"),
    blocks::field(&S::greatest_thickness, "greatest_thickness", "where it is thickest", "m"),
    blocks::field(&S::area, "area", "of its own outline", "m2"),
    blocks::field(&S::mass, "mass", "of its material wherever it fills the sole", "kg"));
}

struct SoleFacts
{
  std::string           title;
  bool                  invented = false;
  double                length = 0, area = 0;                            ///< [m], [m2]
  double                width_heel = 0, width_waist = 0, width_ball = 0; ///< across the foot [m]
  double                height_heel = 0, height_ball = 0;                ///< of the stack [m]
  double                drop = 0;                                        ///< heel less ball [m]
  double                toe_spring = 0, heel_bevel = 0;                  ///< gaps on a flat floor [m]
  double                mass = 0;                                        ///< [kg]
  std::vector<SolePart> parts;                                           ///< foot side first
};

constexpr auto block_of(const SoleFacts *)
{
  using S = SoleFacts;
  return blocks::block<S>(
    "sole", "what a sole measures and weighs as described",
    blocks::field(&S::title, "title", "of the sole file"),
    blocks::field(&S::invented, "invented", "whether it is made up"),
    blocks::field(&S::length, "length", "heel to toe tip", "m"),
    blocks::field(&S::area, "area", "inside the outline", "m2"),
    blocks::field(&S::width_heel, "width_heel", "across the foot, 16 % of the length from the heel", "m"),
    blocks::field(&S::width_waist, "width_waist", "35 % of the length from the heel", "m"),
    blocks::field(&S::width_ball, "width_ball", "where the ball line crosses the middle line", "m"),
    blocks::field(&S::height_heel, "height_heel", "of the stack at the heel station", "m"),
    blocks::field(&S::height_ball, "height_ball", "of the stack at the ball", "m"),
    blocks::field(&S::drop, "drop", "height at the heel less height at the ball", "m"),
    blocks::field(&S::toe_spring, "toe_spring", "gap under the tip of the toe", "m"),
    blocks::field(&S::heel_bevel, "heel_bevel", "gap under the rearmost point of the heel", "m"),
    blocks::field(&S::mass, "mass", "estimate from densities; films and glue are not in it", "kg"),
    blocks::field(&S::parts, "parts", "its layers, foot side first"));
}

SoleFacts sole_facts(const solver::Sole &sole, const geometry::SoleBody &body);

/// As a JSON object in SI.
std::string facts_json(const SoleFacts &facts);
} // namespace solemech::tools
