// SPDX-License-Identifier: Apache-2.0
// Which layer of one stack answers to which of the other. Both lists stand from the foot to the ground; pairs
// keep that order and make the sum of their likeness greatest (sequence alignment: S. B. Needleman and C. D.
// Wunsch, J. Mol. Biol. 48 (1970) 443). Alike are layers of one role, of one name, of one material, and the
// thickest cushion of either stack, be it foam or an air unit.
#pragma once

#include "solver/case.h"

#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
enum class Role { board, insert, foam, unit, plate, rubber };

Role role_of(const solver::Layer &layer);

/// Boards, plates and inserts: they stand beside the cushion, and no foam is cut to make room for them.
bool is_one_piece(Role role);

/// Height of the layers that are no boards, plates or inserts [m].
double cushion_height(const std::vector<solver::Layer> &layers);

/// Number of a layer in each stack; one of the two may be missing.
struct LayerPair
{
  std::optional<std::size_t> a, b;
};

/// Every layer of both stacks once, foot side first.
std::vector<LayerPair> aligned(const std::vector<solver::Layer> &a, const std::vector<solver::Layer> &b);

/// True when a run cannot tell the two materials apart; names and sources do not matter.
bool same_material(const materials::Material &a, const materials::Material &b);
} // namespace solemech::tools
