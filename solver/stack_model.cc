// SPDX-License-Identifier: Apache-2.0
#include "solver/stack_model.h"

#include "solver/contributions/bedding.h"
#include "solver/contributions/rigid_weight.h"
#include "solver/contributions/support.h"
#include "solver/inflation.h"
#include "solver/part_law.h"
#include "solver/rig_parts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace solemech::solver
{
namespace
{
/// Pressure of a bench blow over the confined modulus of the softest layer. Under a weaker one the
/// penetration has to be small against the smaller sink.
constexpr double bench_pressure = 1.0 / 3;
/// Stiffness of the bedding under a resting stack over that of its softest layer.
constexpr double bedding_share = 1e-3;
/// Height of the jaws of a clamped base over the thickness of the lowest layer; their stiffness per area over
/// the softest modulus per height of theirs: much firmer than what they hold.
constexpr double jaw_share = 0.5, jaw_stiffness = 20;
/// Depth over stack height for which the mesh under the striker is made.
constexpr double expected_depth = 0.3;

/// Per metre of depth in a plane section [m2].
double loaded_area(Section section, double radius)
{
  return section == Section::axisymmetric ? std::numbers::pi * radius * radius : 2 * radius;
}

bool is_inflated(const AirUnit &unit)
{
  return unit.state != ChamberState::open && unit.gauge_pressure > 0;
}

double edge_or_default(const Tup &tup)
{
  return tup.edge_radius > 0 ? tup.edge_radius : 0.02 * tup.diameter;
}
} // namespace

geometry::RigidSurface striker_surface(const Tup &tup)
{
  const double radius = 0.5 * tup.diameter;
  switch (tup.shape)
  {
  case TupShape::sphere:
    return geometry::Sphere(radius);
  case TupShape::spherical_ended:
    return geometry::SphericalEndedRod(radius, tup.end_radius, edge_or_default(tup));
  case TupShape::cone:
    return geometry::ConeFrustum(tup.end_radius, tup.half_angle, tup.edge_radius, radius);
  case TupShape::flat:
    break;
  }
  return geometry::FlatPuck(radius, edge_or_default(tup));
}

double column_stiffness(const Case &input, const Tup &tup)
{
  double compliance = 0;
  for (const auto &layer : input.layers)
    compliance += layer.thickness / (layer.area_share * equilibrium_modulus(layer.material, input));
  return loaded_area(input.plug.section, std::min(0.5 * tup.diameter, input.plug.radius)) / compliance;
}

double striker_reach(const Tup &tup, double depth)
{
  return geometry::contact_radius(striker_surface(tup), depth);
}

geometry::PlugOutline StackModel::outline(const Tup &tup) const
{
  geometry::PlugOutline outline;
  outline.radius = input.plug.radius;
  for (const auto &part : parts)
    outline.part_names.push_back(part.name);
  const auto number = [&](const std::string &name) {
    return static_cast<int>(
      std::find_if(parts.begin(), parts.end(), [&](const Part &p) { return p.name == name; }) -
      parts.begin());
  };
  for (auto layer = input.layers.rbegin(); layer != input.layers.rend(); ++layer)
  {
    geometry::Strip strip;
    strip.thickness = layer->thickness;
    if (layer->ring && 0.5 * layer->core_diameter < outline.radius)
      strip.zones = {{0.5 * layer->core_diameter, number(layer->name)},
                     {outline.radius, number(layer->name + " ring")}};
    else
      strip.zones = {{outline.radius, number(layer->name)}};
    if (layer->unit)
      strip.chamber = geometry::AirUnitOutline{0.5 * layer->unit->diameter, layer->unit->film_thickness,
                                               number(layer->name + " film")};
    outline.strips.push_back(strip);
  }
  const double depth = expected_depth * height;
  outline.tup_contact_radius = geometry::contact_radius(tup_surface, depth);
  outline.tup_edge_radius = geometry::contact_edge_radius(tup_surface, depth);
  if (tup.shape == TupShape::flat)
    outline.tup_contact_radius = 0.5 * tup.diameter, outline.tup_edge_radius = edge_or_default(tup);
  if (input.plug.side == Side::ring)
  {
    outline.wall_thickness = input.plug.side_thickness;
    outline.wall_part = number("wall");
  }
  return outline;
}

StackModel::StackModel(const Case &the_case, const Tup &tup, double tup_mass,
                       const Resolution &the_resolution, double expected_force, const SmallStriker &small)
  : input(the_case), resolution(the_resolution), height(stack_height(the_case.layers)),
    tup_surface(striker_surface(tup))
{
  for (const auto &layer : input.layers)
  {
    parts.push_back({layer.name, layer.material, layer.area_share, layer.name});
    if (layer.ring)
      parts.push_back({layer.name + " ring", *layer.ring, layer.area_share, layer.name});
    if (layer.unit)
      parts.push_back({layer.name + " film", layer.unit->film, 1.0, layer.name, true});
  }
  if (input.plug.side == Side::ring)
    parts.push_back({"wall", input.plug.side_material, 1.0, ""});

  using geometry::BoundaryId;
  const auto section = input.plug.section == solver::Section::axisymmetric ? MeshSection::axisymmetric
                                                                           : MeshSection::plane_strain;
  const auto drawing = outline(tup);
  const auto plug_mesh = small.lines
                           ? geometry::make_plug_mesh(drawing, small.lines(drawing))
                           : geometry::make_plug_mesh(drawing, geometry::MeshSize(resolution.mesh_level));
  mesh = std::make_unique<Discretisation>(plug_mesh, section, [&](const geometry::BoundaryFace &face) {
    const Base base = input.plug.base;
    if (face.id == static_cast<int>(BoundaryId::axis))
      return std::array<bool, 2>{true, false};
    if (face.id == static_cast<int>(BoundaryId::base))
      return std::array<bool, 2>{base == Base::bonded || base == Base::clamped, base != Base::resting};
    return std::array<bool, 2>{false, false};
  });
  equation.numbering = mesh.get();
  const RigidBody striker = equation.add(lifted_body(tup_mass));

  std::vector<UnitToInflate> units;
  for (unsigned c = 0; c < plug_mesh.chambers.size(); ++c)
  {
    const auto  &layer = input.layers[input.layers.size() - 1 - plug_mesh.chambers[c].strip];
    const auto   film = std::find_if(parts.begin(), parts.end(),
                                     [&](const Part &part) { return part.name == layer.name + " film"; });
    const double inside = layer.thickness - 2 * layer.unit->film_thickness;
    chambers.push_back({layer.name, inside, layer.unit->packed_share * inside, nullptr, nullptr});
    if (is_inflated(*layer.unit) && layer.unit->has_fibres)
      units.push_back({c, static_cast<int>(film - parts.begin()), &*layer.unit, inside});
  }
  const auto drawn = mesh->nodes();
  double     level = height;
  for (std::size_t i = 0; i <= input.layers.size(); ++i)
  {
    unsigned nearest = 0;
    for (unsigned node = 0; node < drawn.size(); ++node)
      if (std::hypot(drawn[node][0], drawn[node][1] - level) <
          std::hypot(drawn[nearest][0], drawn[nearest][1] - level))
        nearest = node;
    axis_nodes_.push_back(nearest);
    if (i < input.layers.size())
      level -= input.layers[i].thickness;
  }
  const auto inflation = inflate(*mesh, units, input, inflating);
  mesh->move_nodes(inflation);
  if (expected_force > 0)
  {
    const double sink = expected_force / column_stiffness(input, tup);
    const double area =
      loaded_area(input.plug.section, std::min(input.plug.radius, striker_reach(tup, sink)));
    load_share_ = std::min(1.0, expected_force / area / (bench_pressure * softest_modulus()));
  }
  make_bodies(drawn, inflation);
  make_chambers();
  make_side_and_base();

  // The top, and the side, which may roll up onto the striker.
  std::vector<geometry::BoundaryFace> touching;
  for (const auto &face : plug_mesh.faces)
    if (face.id == static_cast<int>(BoundaryId::top) || face.id == static_cast<int>(BoundaryId::side))
      touching.push_back(face);
  // A small ball touches a few millimetres only: there the pressure is a mean over less.
  const double contact_length =
    small.contact_length > 0 ? small.contact_length : std::min(height, tup.diameter);
  const ContactSettings settings{
    .penalty = penalty(contact_length),
    .friction = tup.friction,
    .stick = small.sticks ? softest_modulus() / (resolution.penetration * contact_length) : 0.0,
    .pressure_window = std::min(5e-3, tup.diameter / 8)};
  auto contact = std::make_unique<Contact>(rig_part::striker, *mesh, touching, tup_surface, settings, striker,
                                           height, false);
  tup_contact = contact.get();
  equation.contributions.push_back(std::move(contact));
  auto self_contact = std::make_unique<SelfContact>(*mesh, penalty(height));
  folds = self_contact.get();
  equation.contributions.push_back(std::move(self_contact));
  equation.contributions.push_back(
    std::make_unique<RigidWeight>(rig_part::striker, striker, tup_mass * input.gravity));
  come_to_rest();
}

const AirUnit &StackModel::unit_of(unsigned chamber) const
{
  return *input.layers[input.layers.size() - 1 - mesh->mesh().chambers[chamber].strip].unit;
}

void StackModel::come_to_rest()
{
  rest_ = Vector::Zero(equation.n_unknowns());
  touch_height = height;
  std::vector<ChamberToFill> gases;
  bool                       in_place = false;
  for (unsigned c = 0; c < chambers.size(); ++c)
    if (chambers[c].gas)
    {
      const auto &unit = unit_of(c);
      gases.push_back({chambers[c].gas, unit.gauge_pressure, !unit.has_fibres});
      in_place = in_place || (is_inflated(unit) && !unit.has_fibres);
    }
  if (in_place)
    rest_ =
      inflate_in_place(equation, gases, 5 * height + 2 * input.plug.radius, inflating); // above any balloon
  for (unsigned c = 0; c < chambers.size(); ++c)
    measure_chamber(c);
  const double above = gases.empty() ? 0.0 : first_touch(at_rest());
  touch_height += above;
  tup_contact->start_from(touch_height);
  rest_thickness = axis_thickness(at_rest());
}

Vector StackModel::at_rest() const
{
  Vector x = Vector::Zero(equation.size());
  x.head(rest_.size()) = rest_;
  return x;
}

double StackModel::first_touch(Vector x) const
{
  const auto touches = [&](double level) {
    x[tup_unknown()] = level;
    return tup_contact->state(x).deepest > 0;
  };
  double above = 0, below = 0;
  while (touches(above))
    below = above, above += 0.1 * height;
  while (above == below || !touches(below))
  {
    if (below < -height)
      return above; // it misses the stack
    below -= 0.1 * height;
  }
  constexpr int n_halvings = 40;
  for (int i = 0; i < n_halvings; ++i)
  {
    const double middle = 0.5 * (above + below);
    (touches(middle) ? below : above) = middle;
  }
  return above;
}

void StackModel::make_bodies(const std::vector<Point> &drawn, const std::vector<Point> &inflation)
{
  equation.mass.assign(mesh->pattern().nonZeros() + 1, 0.0);
  for (unsigned i = 0; i < parts.size(); ++i)
  {
    auto kernel = make_part_kernel(parts[i].material, parts[i].area_share, input);
    // Films are stressed by the inflation; everything else is stress-free in the inflated shape.
    const bool film = parts[i].film;
    auto       group = mesh->group(i, kernel->n_branches(), film ? drawn : mesh->nodes(),
                             film ? inflation : std::vector<Point>{});
          mesh->add_mass(group, parts[i].material.density * parts[i].area_share, equation.mass.data());
    auto body = std::make_unique<SolidBody>(std::move(group), std::move(kernel));
    bodies.push_back(body.get());
    equation.contributions.push_back(std::move(body));
  }
}

void StackModel::make_chambers()
{
  for (unsigned c = 0; c < chambers.size(); ++c)
  {
    const auto  &drawn = mesh->mesh().chambers[c];
    const auto  &layer = input.layers[input.layers.size() - 1 - drawn.strip];
    const auto  &unit = unit_of(c);
    const double absolute = input.atmospheric_pressure + unit.gauge_pressure;
    const double heat_time = unit.heat_time >= 0
                               ? unit.heat_time
                               : materials::heat_time_between_fibres(unit.filament_spacing, unit.fibre_radius,
                                                                     absolute, input.temperature);
    ChamberFacts facts{layer.name, unit.gauge_pressure, 0, 0, 0, std::isfinite(heat_time) ? heat_time : -1.0,
                       0};
    if (unit.state != ChamberState::open)
    {
      std::optional<materials::ChamberLeak> leak;
      if (unit.state == ChamberState::leaking)
        leak = materials::ChamberLeak{.diameter = unit.leak_diameter};
      auto gas = std::make_unique<GasChamber>(
        layer.name, *mesh, drawn,
        materials::ChamberGas{input.temperature, input.atmospheric_pressure, heat_time}, unit.outside_volume,
        leak);
      gas->seal(Vector::Zero(equation.size()), unit.gauge_pressure);
      chambers[c].gas = gas.get();
      equation.contributions.push_back(std::move(gas));
    }
    {
      // Without fibres the films still pile up when pressed flat.
      AirUnit now = unit;
      if (unit.state == ChamberState::open || !unit.has_fibres)
        now.gauge_pressure = 0;
      facts.fibre_tension = now.gauge_pressure * unit.fibre_spacing * unit.fibre_spacing;
      auto fibres = std::make_unique<FibreBundle>(
        layer.name, *mesh, drawn,
        materials::TensileFibres{
          unit.has_fibres ? unit.fibre_stiffness / (unit.fibre_spacing * unit.fibre_spacing) : 0.0,
          fibre_rest_length(now, chambers[c].height), chambers[c].packed_height});
      chambers[c].fibres = fibres.get();
      equation.contributions.push_back(std::move(fibres));
    }
    chamber_facts.push_back(facts);
  }
}

void StackModel::measure_chamber(unsigned c)
{
  const Vector x = at_rest();
  auto        &facts = chamber_facts[c];
  for (const unsigned face : mesh->mesh().chambers[c].wetted_faces)
    for (const unsigned node : mesh->edge(mesh->mesh().faces[face]))
    {
      const int    dof = mesh->dof(node, 0);
      const double radius = mesh->nodes()[node][0] + (dof >= 0 ? x[dof] : 0.0);
      facts.bulge = std::max(facts.bulge, radius - (0.5 * unit_of(c).diameter - unit_of(c).film_thickness));
    }
  if (chambers[c].gas)
    facts.volume = chambers[c].gas->volume(x);
  facts.threshold_load = chambers[c].fibres->pull(x);
}

void StackModel::make_side_and_base()
{
  std::vector<geometry::BoundaryFace> side, ground;
  for (const auto &face : mesh->mesh().faces)
  {
    if (face.id == static_cast<int>(geometry::BoundaryId::side))
      side.push_back(face);
    if (face.id == static_cast<int>(geometry::BoundaryId::base))
      ground.push_back(face);
  }
  if (input.plug.side == Side::shell)
    equation.contributions.push_back(
      std::make_unique<Bedding>("shell", *mesh, side, 0, input.plug.shell_stiffness));
  // Jaws hold the foot of the side: firmly at the base, fading out half way up the lowest layer, so that no
  // edge of theirs stands in the striker's way.
  if (input.plug.base == Base::clamped)
  {
    const double top = jaw_share * input.layers.back().thickness;
    const double firm = jaw_stiffness * softest_modulus() / top;
    equation.contributions.push_back(std::make_unique<Bedding>(
      "jaws", *mesh, side, 0, [=](double z) { return firm * std::max(0.0, 1 - z / top); }));
  }
  if (input.plug.base == Base::resting)
  {
    equation.contributions.push_back(std::make_unique<Contact>(
      "base", *mesh, ground, geometry::Plane(),
      ContactSettings{.penalty = penalty(height), .friction = input.plug.base_friction}, RigidBody{}, 0.0,
      true));
  }
  // A stack that only lies there has no stiffness at all until it is pressed: a bedding too weak to be read
  // (a thousandth of the softest layer's) gives its first tangent something to stand on.
  if (input.plug.base == Base::resting)
    equation.contributions.push_back(
      std::make_unique<Bedding>("base", *mesh, ground, 1, bedding_share * softest_modulus() / height));
  // The side may bulge down onto the base.
  if (input.plug.base != Base::sliding)
    equation.contributions.push_back(std::make_unique<Contact>("base", *mesh, side, geometry::Plane(),
                                                               ContactSettings{.penalty = penalty(height)},
                                                               RigidBody{}, 0.0, true));
}

void StackModel::stand_on_support(double mass, double stiffness, double damping)
{
  const RigidBody block = equation.add(lifted_body(mass));
  tup_contact->stand_on(block);
  equation.contributions.push_back(std::make_unique<Support>(block.first, stiffness, damping));
}

std::vector<double> StackModel::axis_thickness(const Vector &x) const
{
  const auto level = [&](unsigned node) {
    const int dof = mesh->dof(node, 1);
    return mesh->nodes()[node][1] + (dof >= 0 ? x[dof] : 0.0);
  };
  std::vector<double> thickness;
  for (std::size_t i = 0; i + 1 < axis_nodes_.size(); ++i)
    thickness.push_back(level(axis_nodes_[i]) - level(axis_nodes_[i + 1]));
  return thickness;
}

double StackModel::softest_modulus() const
{
  double softest = std::numeric_limits<double>::infinity();
  for (const auto &layer : input.layers)
    softest = std::min(softest, layer.area_share * stiffest_confined_modulus(layer.material, input));
  return softest;
}

double StackModel::penalty(double length) const
{
  const double depth = resolution.penetration * length;
  return softest_modulus() / (load_share_ * depth * depth);
}
} // namespace solemech::solver
