// SPDX-License-Identifier: Apache-2.0
// What the parts of a layer are called: the layer's own name, and a ring and a film behind it. Names of
// layers have no spaces.
#pragma once

#include <string>

namespace solemech::solver
{
inline std::string ring_part(const std::string &layer)
{
  return layer + " ring";
}

inline std::string film_part(const std::string &layer)
{
  return layer + " film";
}

inline bool is_part_of(const std::string &part, const std::string &layer)
{
  return part == layer || part == ring_part(layer) || part == film_part(layer);
}
} // namespace solemech::solver
