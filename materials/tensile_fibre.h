// SPDX-License-Identifier: Apache-2.0
// Fibres that join the top and bottom film of an air unit, smeared over its area: a pull above their length,
// nothing between, and the packed pile of fibre and film pushing back below its height.
//   pull = k x^2/(2 w) for 0 < x < w, k (x - w/2) beyond;  x = length - rest length, w = 0.2 % of it
//   push = k_p y^2/(1 - y),                                y = 1 - length/packed height
// The push is the simplest one that starts smoothly and never lets the pile close (no outside source).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
/// Answer of the fibres, per area of film.
template <typename Number>
struct FibreResponse
{
  Number energy;    ///< [J/m2]
  Number tension;   ///< pulls the films together when positive, pushes them apart when negative [Pa]
  Number stiffness; ///< d tension/d length [Pa/m], >= 0
};

struct TensileFibres
{
  double tension_stiffness = 0; ///< k, of one fibre over the area it serves [N/m per m2 = Pa/m], >= 0
  double rest_length = 0;       ///< [m], > 0
  double packed_height = 0;     ///< of fibres and film in a pile [m], 0: none, < rest length
  double packed_modulus = 10e6; ///< k_p [Pa]; common practice, no source

  double smoothing() const { return 0.002 * rest_length; } ///< w [m]

  /// Smallest length a state may have; at or below it an iterate is to be rejected [m].
  double smallest_length() const { return 0.02 * packed_height; }

  /// Response at the distance `length` [m] of the films.
  template <typename Number>
  FibreResponse<Number> response(const Number &length) const
  {
    using std::log1p;
    const double k = tension_stiffness, w = smoothing();
    const Number zero(0.0);
    const Number x = select(length > rest_length, length - rest_length, zero);
    const auto   soft = x < w;

    FibreResponse<Number> out;
    out.tension = k * select(soft, x * x * (0.5 / w), x - 0.5 * w);
    out.stiffness = k * select(soft, x * (1 / w), Number(1.0));
    out.energy = k * select(soft, x * x * x * (1 / (6 * w)), 0.5 * x * (x - w) + w * w / 6);
    if (packed_height > 0)
    {
      const Number y = select(length < packed_height, 1.0 - length * (1 / packed_height), zero);
      const Number free = 1.0 - y;
      out.tension = out.tension - packed_modulus * y * y / free;
      out.stiffness = out.stiffness + packed_modulus / packed_height * y * (2.0 - y) / (free * free);
      out.energy = out.energy - packed_modulus * packed_height * (y + 0.5 * y * y + log1p(-1.0 * y));
    }
    return out;
  }
};

/// Throws InvalidParameter when a number is outside its range.
inline void check(const TensileFibres &fibres)
{
  require_not_negative("fibre stiffness per area", fibres.tension_stiffness);
  require_positive("fibre length", fibres.rest_length);
  require(fibres.packed_height >= 0 && fibres.packed_height < fibres.rest_length, "packed height",
          fibres.packed_height, "a height from 0 to below the fibre length");
  require_positive("packed modulus", fibres.packed_modulus);
}
} // namespace solemech::materials
