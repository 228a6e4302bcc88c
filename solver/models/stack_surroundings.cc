// SPDX-License-Identifier: Apache-2.0
#include "solver/models/stack_surroundings.h"

#include "solver/contributions/bedding.h"
#include "solver/contributions/contact.h"
#include "solver/rig_parts.h"

#include <algorithm>

namespace solemech::solver
{
namespace
{
/// Stiffness of the bedding under a resting stack over that of its softest layer.
constexpr double bedding_share = 1e-3;
/// Height of the jaws of a clamped base over the thickness of the lowest layer; their stiffness per area over
/// the softest modulus per height of theirs: much firmer than what they hold.
constexpr double jaw_share = 0.5, jaw_stiffness = 20;
} // namespace

std::vector<geometry::BoundaryFace> faces_at(const Discretisation             &mesh,
                                             std::vector<geometry::BoundaryId> names)
{
  std::vector<geometry::BoundaryFace> faces;
  for (const auto &face : mesh.mesh().faces)
    if (std::ranges::any_of(names, [&](auto name) { return face.id == static_cast<int>(name); }))
      faces.push_back(face);
  return faces;
}

std::array<bool, 2> held_at(const geometry::BoundaryFace &face, Base base)
{
  if (face.id == static_cast<int>(geometry::BoundaryId::axis))
    return {true, false};
  if (face.id == static_cast<int>(geometry::BoundaryId::base))
    return {base == Base::bonded || base == Base::clamped, base != Base::resting};
  return {false, false};
}

void add_side_and_base(const Case &input, const Discretisation &mesh, const ContactStiffness &stiffness,
                       EquationOfMotion &equation)
{
  const auto  &plug = input.plug;
  const auto   side = faces_at(mesh, {geometry::BoundaryId::side});
  const auto   ground = faces_at(mesh, {geometry::BoundaryId::base});
  const double height = stack_height(input.layers), softest = stiffness.softest_modulus;
  const auto   stand_on_ground = [&](const std::vector<geometry::BoundaryFace> &faces, double friction) {
    equation.contribute<Contact>(rig_part::ground, mesh, faces, geometry::Plane(),
                                 ContactSettings{.penalty = stiffness.penalty(height), .friction = friction},
                                 RigidBody{}, 0.0, true);
  };
  if (plug.side == Side::shell)
    equation.contribute<Bedding>(rig_part::shell, mesh, side, 0, plug.shell_stiffness);
  // Jaws hold the foot of the side: firmly at the base, fading out half way up the lowest layer, so that no
  // edge of theirs stands in the striker's way.
  if (plug.base == Base::clamped)
  {
    const double top = jaw_share * input.layers.back().thickness, firm = jaw_stiffness * softest / top;
    equation.contribute<Bedding>(rig_part::jaws, mesh, side, 0,
                                 [=](double z) { return firm * std::max(0.0, 1 - z / top); });
  }
  // A stack that only lies there has no stiffness at all until it is pressed: a bedding too weak to be read
  // (a thousandth of the softest layer's) gives its first tangent something to stand on.
  if (plug.base == Base::resting)
  {
    stand_on_ground(ground, plug.base_friction);
    equation.contribute<Bedding>(rig_part::ground, mesh, ground, 1, bedding_share * softest / height);
  }
  // The side may bulge down onto the base.
  if (plug.base != Base::sliding)
    stand_on_ground(side, 0);
}
} // namespace solemech::solver
