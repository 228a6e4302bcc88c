// SPDX-License-Identifier: Apache-2.0
#include "solver/models/roller.h"

#include "solver/models/stack_surroundings.h"

namespace solemech::solver
{
namespace
{
/// A surface is symmetric about x = 0 of its body, so a way along x carries it to its place.
LedRoller add(SectionModel &model, const Roller &roller, RigidBody body, double penalty)
{
  const bool below = roller.meets == Meets::lower_face;
  body = model.equation.add(std::move(body));
  auto &contact = model.equation.contribute<Contact>(
    roller.name, *model.mesh,
    faces_at(*model.mesh, {below ? geometry::BoundaryId::base : geometry::BoundaryId::top}),
    geometry::Sphere(roller.radius), ContactSettings{.penalty = penalty * model.width}, body,
    roller.centre[1] + (below ? roller.radius : -roller.radius), below);
  model.equation.boundary.hold(body.unknown(0), roller.centre[0]);
  model.equation.boundary.hold(body.unknown(1), 0);
  return {contact, body, roller.centre[0]};
}
} // namespace

double LedRoller::reaction(const Vector &x, std::size_t freedom) const
{
  Vector force = Vector::Zero(x.size());
  contact_->add(x, force, nullptr);
  return force[body_.unknown(freedom)];
}

LedRoller add_roller(SectionModel &model, const Roller &roller, double penalty)
{
  return add(model, roller, {{Freedom::along_x, Freedom::along_z}, {0, 0}, {}, 0}, penalty);
}

LedRoller add_roller_on_arm(SectionModel &model, const Roller &roller, const Point &axis, double penalty)
{
  // The way along x carries the axis as well.
  return add(model, roller,
             {{Freedom::along_x, Freedom::about_y}, {0, 0}, {axis[0] - roller.centre[0], axis[1]}, 0},
             penalty);
}
} // namespace solemech::solver
