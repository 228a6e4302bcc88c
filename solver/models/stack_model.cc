// SPDX-License-Identifier: Apache-2.0
#include "solver/models/stack_model.h"

#include "solver/contributions/rigid_weight.h"
#include "solver/contributions/support.h"
#include "solver/models/first_touch.h"
#include "solver/models/stack_surroundings.h"
#include "solver/part_law.h"
#include "solver/rig_parts.h"

#include <algorithm>

namespace solemech::solver
{
namespace
{
std::unique_ptr<Discretisation> discretised(const Case &input, const geometry::PlugMesh &drawn)
{
  const auto section =
    input.plug.section == Section::axisymmetric ? MeshSection::axisymmetric : MeshSection::plane_strain;
  return std::make_unique<Discretisation>(
    drawn, section, [&](const geometry::BoundaryFace &face) { return held_at(face, input.plug.base); });
}
} // namespace

StackModel::StackModel(const Case &the_case, const Tup &tup, double tup_mass, const Resolution &resolution,
                       double expected_force, const SmallStriker &small)
  : input(the_case), parts(parts_of(input)), height(stack_height(input.layers)),
    tup_surface(striker_surface(tup)), touch_height(height)
{
  const auto outline = outline_of(input, parts, tup);
  const auto drawing = small.lines
                         ? geometry::make_plug_mesh(outline, small.lines(outline))
                         : geometry::make_plug_mesh(outline, geometry::MeshSize(resolution.mesh_level));
  stand_on(discretised(input, drawing));
  const RigidBody striker = equation.add(lifted_body(tup_mass));
  layer_thickness = LayerThickness(*mesh, input.layers);
  chambers = drawn_chambers(input, drawing);
  const auto drawn = mesh->nodes();
  const auto inflation = inflate(*mesh, units_to_inflate(chambers, input, parts), input, inflating);
  mesh->move_nodes(inflation);

  const auto stiffness = contact_stiffness(input, tup, expected_force, resolution.penetration);
  make_bodies(drawn, inflation);
  fill(chambers, input, *mesh, equation);
  add_side_and_base(input, *mesh, stiffness, equation);
  add_striker(striker, tup, stiffness, small);
  folds = &equation.contribute<SelfContact>(*mesh, stiffness.penalty(height));
  equation.contribute<RigidWeight>(rig_part::striker, striker, tup_mass * input.gravity);
  come_to_rest();
}

void StackModel::make_bodies(const std::vector<Point> &drawn, const std::vector<Point> &inflation)
{
  for (unsigned i = 0; i < parts.size(); ++i)
  {
    auto kernel = make_part_kernel(parts[i].material, parts[i].area_share, input);
    // Films are stressed by the inflation; everything else is stress-free in the inflated shape.
    const bool film = parts[i].film;
    auto       group = mesh->group(i, kernel->n_branches(), film ? drawn : mesh->nodes(),
                             film ? inflation : std::vector<Point>{});
          mesh->add_mass(group, parts[i].material.density * parts[i].area_share, equation.mass.data());
    bodies.push_back(&equation.contribute<SolidBody>(std::move(group), std::move(kernel)));
  }
}

void StackModel::add_striker(const RigidBody &striker, const Tup &tup, const ContactStiffness &stiffness,
                             const SmallStriker &small)
{
  // The top, and the side, which may roll up onto the striker.
  const auto touching = faces_at(*mesh, {geometry::BoundaryId::top, geometry::BoundaryId::side});
  // A small ball touches a few millimetres only: there the pressure is a mean over less.
  const double length = small.contact_length > 0 ? small.contact_length : std::min(height, tup.diameter);
  const ContactSettings settings{
    .penalty = stiffness.penalty(length),
    .friction = tup.friction,
    .stick = small.sticks ? stiffness.softest_modulus / (stiffness.penetration * length) : 0.0,
    .pressure_window = std::min(5e-3, tup.diameter / 8)};
  tup_contact = &equation.contribute<Contact>(rig_part::striker, *mesh, touching, tup_surface, settings,
                                              striker, height, false);
}

void StackModel::come_to_rest()
{
  // Above any balloon.
  const double away = 5 * height + 2 * input.plug.radius;
  rest_ = inflate_in_place(chambers, equation, away, inflating);
  for (unsigned c = 0; c < chambers.size(); ++c)
    chamber_facts.push_back(facts_of(chambers[c], mesh->mesh().chambers[c], input, *mesh, at_rest()));
  if (std::ranges::any_of(chambers, [](const Chamber &chamber) { return chamber.gas; }))
    touch_height += first_touch(at_rest());
  tup_contact->start_from(touch_height);
  rest_thickness = layer_thickness.at(at_rest());
}

Vector StackModel::at_rest() const
{
  Vector x = Vector::Zero(equation.size());
  x.head(rest_.size()) = rest_;
  return x;
}

double StackModel::first_touch(const Vector &x) const
{
  return solver::first_touch(*tup_contact, tup_unknown(), x, height);
}

void StackModel::stand_on_support(double mass, double stiffness, double damping)
{
  const RigidBody block = equation.add(lifted_body(mass));
  tup_contact->stand_on(block);
  equation.contribute<Support>(block.first, stiffness, damping);
}
} // namespace solemech::solver
