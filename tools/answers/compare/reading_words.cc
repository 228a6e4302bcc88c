// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/reading_words.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr ReadingWords all_words[] = {
  {"rebound_by_height", "rebound", "%", "points", 100, 1, "higher", "lower", 0.02, 0},
  {"loop_return", "energy return", "%", "points", 100, 1, "higher", "lower", 0.02, 0},
  {"return_by_speed", "return by speed", "%", "points", 100, 1, "higher", "lower", 0.02, 0},
  {"return_by_loop", "return by loop", "%", "points", 100, 1, "higher", "lower", 0.02, 0},
  {"peak_force", "peak force", "N", "N", 1, 0, "higher", "lower", 0, 0.03},
  {"greatest_compression", "compression", "mm", "mm", 1e3, 2, "deeper", "less deep", 0, 0},
  {"peak_displacement", "displacement", "mm", "mm", 1e3, 2, "deeper", "less deep", 0, 0},
  {"hardness", "hardness", "points", "points", 1, 1, "harder", "softer", 1, 0},
  {"life_steps", "life", "1000 steps", "1000 steps", 1e-3, 0, "longer", "shorter", 0, 0.03},
  {"ground_depth", "depth ground", "mm", "mm", 1e3, 2, "deeper", "less deep", 0, 0.03},
  {"face_rise", "warming of the face", "K", "K", 1, 0, "warmer", "cooler", 0, 0.1},
  {"worn_grip", "grip when worn", "", "", 1, 2, "more", "less", 0, 0.03},
  {"grip_push_off", "grip in a push-off", "", "", 1, 2, "more", "less", 0, 0.03},
  {"grip_braking", "grip in braking", "", "", 1, 2, "more", "less", 0, 0.03},
  {"grip_side_cut", "grip in a side cut", "", "", 1, 2, "more", "less", 0, 0.03},
  {"pivot_moment", "pivot moment", "N m", "N m", 1, 1, "more", "less", 0, 0.03},
  {"effective_grip", "grip", "", "", 1, 2, "more", "less", 0, 0.03},
  {"contact_share", "contact", "%", "points", 100, 0, "more", "less", 0.02, 0},
  {"edge_pressure", "edge pressure", "kPa", "kPa", 1e-3, 0, "higher", "lower", 0, 0.03},
  {"contact_time", "contact time", "ms", "ms", 1e3, 2, "longer", "shorter", 0, 0},
};
constexpr ReadingWords plain{"", "reading", "", "", 1, 3, "more", "less", 0, 0};
} // namespace

const ReadingWords &reading_words(std::string_view name)
{
  for (const ReadingWords &words : all_words)
    if (words.name == name)
      return words;
  return plain;
}

double real_difference(std::string_view name, double from, double to)
{
  const ReadingWords &words = reading_words(name);
  return words.real_difference + words.real_share * std::max(std::abs(from), std::abs(to));
}

bool is_within_doubt(std::string_view name, double from, double to)
{
  return std::abs(to - from) < real_difference(name, from, to);
}
} // namespace solemech::tools
