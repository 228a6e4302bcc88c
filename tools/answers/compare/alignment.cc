// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/alignment.h"

#include "tools/language/case_text.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
using solver::Layer;

bool is_cushion(Role role)
{
  return role == Role::foam || role == Role::unit;
}

/// The thickest layer of foam or air; the first one of equals.
std::size_t main_cushion(const std::vector<Layer> &layers)
{
  std::size_t found = layers.size();
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (is_cushion(role_of(layers[i])) &&
        (found == layers.size() || layers[i].thickness > layers[found].thickness))
      found = i;
  return found;
}

/// Points of likeness. Roles decide whether two layers may answer to each other at all; the order of the
/// weights says what counts: name, main cushion, role, material, thickness (common practice, no source).
double likeness(const Layer &a, bool a_is_main, const Layer &b, bool b_is_main)
{
  constexpr double never = -1e9;
  const Role       role_a = role_of(a), role_b = role_of(b);
  double           points = 0;
  if (role_a == role_b)
    points = 3;
  else if (is_cushion(role_a) && is_cushion(role_b))
    points = 1;
  else
    return never;
  if (a.name == b.name)
    points += 4;
  if (a_is_main && b_is_main)
    points += 4;
  if (same_material(a.material, b.material) && role_a == role_b)
    points += 1;
  if ((a.area_share < 1) == (b.area_share < 1))
    points += 1;
  return points + std::min(a.thickness, b.thickness) / std::max({a.thickness, b.thickness, 1e-9});
}
} // namespace

bool is_one_piece(Role role)
{
  return role == Role::board || role == Role::plate || role == Role::insert;
}

double cushion_height(const std::vector<Layer> &layers)
{
  double height = 0;
  for (const Layer &layer : layers)
    height += is_one_piece(role_of(layer)) ? 0 : layer.thickness;
  return height;
}

Role role_of(const Layer &layer)
{
  if (layer.unit)
    return Role::unit;
  const auto &material = layer.material;
  if (layer.laid_in)
    return Role::insert;
  if (material.family == "board")
    return Role::board;
  if (std::holds_alternative<materials::RubberData>(material.data))
    return Role::rubber;
  return std::holds_alternative<materials::PlateData>(material.data) ? Role::plate : Role::foam;
}

namespace
{
std::vector<LayerPair> aligned_in_order(const std::vector<Layer> &a, const std::vector<Layer> &b)
{
  const std::size_t n_a = a.size(), n_b = b.size(), main_a = main_cushion(a), main_b = main_cushion(b);
  std::vector<std::vector<double>> best(n_a + 1,
                                        std::vector<double>(n_b + 1, 0)); // of the layers from i and j on
  const auto                       pair_points = [&](std::size_t i, std::size_t j) {
    return likeness(a[i], i == main_a, b[j], j == main_b);
  };
  for (std::size_t i = n_a; i-- > 0;)
    for (std::size_t j = n_b; j-- > 0;)
      best[i][j] = std::max({best[i + 1][j], best[i][j + 1], pair_points(i, j) + best[i + 1][j + 1]});

  std::vector<LayerPair> pairs;
  std::size_t            i = 0, j = 0;
  while (i < n_a || j < n_b)
    if (i < n_a && j < n_b && best[i][j] == pair_points(i, j) + best[i + 1][j + 1])
      pairs.push_back({i++, j++});
    else if (j == n_b || (i < n_a && best[i][j] == best[i + 1][j]))
      pairs.push_back({i++, std::nullopt});
    else
      pairs.push_back({std::nullopt, j++});
  return pairs;
}

std::string text_of(const std::vector<Layer> &layers)
{
  solver::Case only;
  only.layers = layers;
  return canonical_text(only);
}
} // namespace

std::vector<LayerPair> aligned(const std::vector<Layer> &a, const std::vector<Layer> &b)
{
  // Always from the same side, so that B against A pairs the layers as A against B does, ties and gaps too.
  if (text_of(a) <= text_of(b))
    return aligned_in_order(a, b);
  auto pairs = aligned_in_order(b, a);
  for (auto &pair : pairs)
    std::swap(pair.a, pair.b);
  return pairs;
}

bool same_material(const materials::Material &a, const materials::Material &b)
{
  return same_to_a_run(a, b);
}
} // namespace solemech::tools
