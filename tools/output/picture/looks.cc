// SPDX-License-Identifier: Apache-2.0
#include "tools/output/picture/looks.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <numbers>
#include <set>

namespace solemech::tools
{
namespace
{
// Two of the same number are apart in hue; the page has darker ones of each for its night theme.
constexpr const char *tones[] = {"#d9cfbb", "#f4d9a0", "#b9d2e6", "#ecbfa8", "#bfdcc4",
                                 "#dac4e2", "#a9d5d2", "#e3dc9b", "#e6b4c3", "#c3c9d2"};

Polygon ring(double x, double y, double radius)
{
  constexpr int n = 10;
  Polygon       points;
  for (int i = 0; i <= n; ++i)
    points.push_back({x + radius * std::cos(2 * std::numbers::pi * i / n),
                      y + radius * std::sin(2 * std::numbers::pi * i / n)});
  return points;
}

/// Hatches of a family: foams have cells, rubber strokes, what is stiff has bars.
std::vector<int> hatches_of(const std::string &family)
{
  static const std::map<std::string, std::vector<int>> own{{"foam", {1, 9, 6, 7}}, {"rubber", {0, 4, 8}},
                                                           {"plate", {2, 5, 3}},   {"film", {5, 2}},
                                                           {"insert", {3, 8}},     {"board", {3, 8}}};
  const auto                                           found = own.find(family);
  return found == own.end() ? std::vector<int>{0, 1, 2, 3, 4, 5, 6, 7, 8, 9} : found->second;
}

/// A number out of a name: FNV-1a (Fowler, Noll, Vo), 32 bits, its high bits folded in. Its start gives the
/// ten materials of the prepared shoes ten tones.
std::uint32_t hash(const std::string &name)
{
  std::uint32_t value = 96181;
  for (const char letter : name)
    value = (value ^ static_cast<unsigned char>(letter)) * 16777619u;
  return value ^ value >> 15;
}

std::vector<const Run *> pointers(const std::vector<Run> &runs)
{
  std::vector<const Run *> all;
  for (const auto &run : runs)
    all.push_back(&run);
  return all;
}

std::map<std::string, std::string> families_of(const std::vector<const Run *> &runs)
{
  std::map<std::string, std::string> families;
  for (const auto *run : runs)
    for (const auto &part : parts_of(*run))
      families[part.material_name] = part.family;
  return families;
}
} // namespace

Looks::Looks(const std::vector<Run> &runs) : Looks(pointers(runs)) {}

Looks::Looks(const std::vector<const Run *> &runs) : Looks(families_of(runs)) {}

Looks::Looks(const std::map<std::string, std::string> &families)
{
  std::set<std::pair<int, int>> taken;
  for (const auto &[name, kind] : families)
  {
    const auto own = hatches_of(kind);
    const auto n_tones = std::size(tones), n = n_tones * own.size();
    const auto look_at = [&](std::size_t at) {
      return Look{static_cast<int>(at % n_tones), own[at / n_tones]};
    };
    std::size_t at = hash(name) % n;
    for (std::size_t tries = 0; tries < n && taken.contains({look_at(at).tone, look_at(at).hatch}); ++tries)
      at = (at + 1) % n;
    const Look look = by_material_[name] = look_at(at);
    taken.insert({look.tone, look.hatch});
  }
}

Look Looks::of(const Part &part) const
{
  return of_material(part.material_name);
}

Look Looks::of_material(const std::string &name) const
{
  const auto found = by_material_.find(name);
  return found == by_material_.end() ? Look() : found->second;
}

std::vector<Look> Looks::of_picture(const Run &run) const
{
  const auto        parts = parts_of(run);
  std::vector<Look> looks;
  for (const auto &name : run.result.picture.part_names)
  {
    const int part = part_number(parts, name);
    looks.push_back(part < 0 ? Look() : of(parts[static_cast<std::size_t>(part)]));
  }
  return looks;
}

const char *tone_colour(int tone)
{
  return tone < 0 ? "#e4e2dc" : tones[static_cast<std::size_t>(tone) % std::size(tones)];
}

const std::vector<Polygon> &hatch_lines(int hatch)
{
  static const std::vector<std::vector<Polygon>> hatches{{{{0, 0}, {8, 8}}},                   // rising
                                                         {ring(4.1, 4, 1.1)},                  // dots
                                                         {{{0, 2}, {8, 2}}, {{0, 6}, {8, 6}}}, // level
                                                         {{{0, 4}, {8, 4}}, {{4, 0}, {4, 8}}}, // grid
                                                         {{{0, 8}, {8, 0}}},                   // falling
                                                         {{{2, 0}, {2, 8}}, {{6, 0}, {6, 8}}}, // upright
                                                         {{{0, 3}, {2, 5}, {4, 3}, {6, 5}, {8, 3}}}, // zigzag
                                                         {{{4, 2}, {4, 6}}, {{2, 4}, {6, 4}}}, // plus signs
                                                         {{{0, 0}, {8, 8}}, {{0, 8}, {8, 0}}}, // crossed
                                                         {ring(4, 4, 2.2)}};                   // circles
  static const std::vector<Polygon>              plain;
  return hatch < 0 ? plain : hatches[static_cast<std::size_t>(hatch) % hatches.size()];
}
} // namespace solemech::tools
