// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/contact.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::solver
{
namespace
{
struct PenaltyResponse
{
  double energy, pressure, stiffness;
};

PenaltyResponse penalty_response(const ContactSettings &s, double depth)
{
  if (depth <= 0)
    return {0, 0, 0};
  return {s.penalty * depth * depth * depth / 3, s.penalty * depth * depth, 2 * s.penalty * depth};
}
} // namespace

Contact::Contact(std::string name, const Discretisation &mesh,
                 const std::vector<geometry::BoundaryFace> &faces, geometry::RigidSurface surface,
                 ContactSettings settings, int body, double height, bool faces_up)
  : name_(std::move(name)), surface_(std::move(surface)), settings_(settings), body_(body),
    n_unknowns_(mesh.n_unknowns()), height_(height), facing_(faces_up ? -1.0 : 1.0), mesh_(&mesh)
{
  for (const SurfacePoint &on_face : surface_points(mesh, faces))
  {
    ContactPoint point{on_face};
    point.position = on_face.at_rest[0];
    points_.push_back(point);
  }
}

double Contact::surface_height(const Vector &x) const
{
  return height_ + (body_ >= 0 ? x[n_unknowns_ + body_] : 0.0) -
         (support_ >= 0 ? x[n_unknowns_ + support_] : 0.0);
}

double Contact::distance(const Point &place, const Vector &x) const
{
  return surface_distance(surface_, place[0], facing_ * (place[1] - surface_height(x))).distance;
}

Contact::Gap Contact::gap(const ContactPoint &point, const Vector &x) const
{
  Gap gap{{}, position(point, x)};
  gap.distance = surface_distance(surface_, gap.position[0], facing_ * (gap.position[1] - surface_height(x)));
  gap.distance.normal[1] *= facing_;
  gap.distance.curvature[2] *= facing_;
  return gap;
}

bool Contact::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  for (const auto &point : points_)
  {
    const auto here = gap(point, x);
    const auto response = penalty_response(settings_, -here.distance.distance);
    if (response.pressure == 0 && !(settings_.friction > 0 && point.pressure > 0) && !point.stuck)
      continue;
    const auto  &n = here.distance.normal;
    const double pull = -response.pressure * point.area; // d energy / d distance
    double       lateral = 0, lateral_stiffness = 0;
    if (settings_.friction > 0 && point.pressure > 0)
    {
      // Radial slip along a level surface; Huber's potential of the slip, with the pressure of the pass
      // before.
      const double limit = settings_.friction * point.pressure * point.area;
      const double trial = point.slip + here.position[0] - point.position,
                   stiffness = limit / settings_.slip_length;
      const bool sticks = std::abs(trial) <= settings_.slip_length;
      lateral = sticks ? stiffness * trial : std::copysign(limit, trial);
      lateral_stiffness = sticks ? stiffness : 0.0;
    }
    double       push[2] = {pull * n[0] + lateral, pull * n[1]};
    const double hold = point.stuck ? settings_.stick * point.area : 0.0;
    if (point.stuck)
    {
      const double slip = stick_slip(point, here.position, x);
      for (unsigned c = 0; c < 2; ++c)
        push[c] += hold * slip * point.along[c];
    }
    for (unsigned a = 0; a < 3; ++a)
      for (unsigned c = 0; c < 2; ++c)
        if (const int dof = point.dof[2 * a + c]; dof >= 0)
          force[dof] += point.shape[a] * push[c];
    if (body_ >= 0)
      force[n_unknowns_ + body_] -= push[1];
    if (support_ >= 0)
      force[n_unknowns_ + support_] += push[1];
    if (!tangent)
      continue;
    const auto  &h = here.distance.curvature;
    const double stiff = response.stiffness * point.area;
    const auto  &t = point.along;
    const double mixed = stiff * n[0] * n[1] + pull * h[2] + hold * t[0] * t[1];
    const double k[2][2] = {
      {stiff * n[0] * n[0] + pull * h[0] + lateral_stiffness + hold * t[0] * t[0], mixed},
      {mixed, stiff * n[1] * n[1] + pull * h[1] + hold * t[1] * t[1]}};
    for (unsigned a = 0; a < 6; ++a)
    {
      if (point.dof[a] < 0)
        continue;
      for (unsigned b = 0; b < 6; ++b)
        if (point.dof[b] >= 0 && point.dof[a] >= point.dof[b])
          mesh_->add_entry(tangent->values, point.dof[a], point.dof[b],
                           point.shape[a / 2] * point.shape[b / 2] * k[a % 2][b % 2]);
      const double pull_on_body = point.shape[a / 2] * k[a % 2][1];
      if (body_ >= 0)
        tangent->coupling(point.dof[a], body_) -= pull_on_body;
      if (support_ >= 0)
        tangent->coupling(point.dof[a], support_) += pull_on_body;
    }
    if (body_ >= 0)
      tangent->bodies(body_, body_) += k[1][1];
    if (support_ >= 0)
    {
      tangent->bodies(support_, support_) += k[1][1];
      if (body_ >= 0)
      {
        tangent->bodies(body_, support_) -= k[1][1];
        tangent->bodies(support_, body_) -= k[1][1];
      }
    }
  }
  return true;
}

double Contact::stick_slip(const ContactPoint &point, const Point &position, const Vector &x) const
{
  return (position[0] - point.touched[0]) * point.along[0] +
         (position[1] - surface_height(x) - point.touched[1]) * point.along[1];
}

void Contact::accept(const Vector &x, double)
{
  stored_ = 0;
  for (auto &point : points_)
  {
    const auto here = gap(point, x);
    stored_ += point.area * penalty_response(settings_, -here.distance.distance).energy;
    if (settings_.stick > 0)
    {
      const bool touches = here.distance.distance < 0;
      if (point.stuck) // what leaves now has held up to here; what it held is lost
        (touches ? stored_ : lost_) +=
          0.5 * settings_.stick * point.area * std::pow(stick_slip(point, here.position, x), 2);
      else if (touches)
      {
        point.touched = {here.position[0], here.position[1] - surface_height(x)};
        point.along = {-here.distance.normal[1], here.distance.normal[0]};
      }
      point.stuck = touches;
    }
    if (settings_.friction > 0)
    {
      const double limit = settings_.friction * point.pressure * point.area;
      const double trial = point.slip + here.position[0] - point.position, length = settings_.slip_length;
      const double excess = std::max(0.0, std::abs(trial) - length);
      lost_ += limit * excess;
      point.slip = std::clamp(trial, -length, length);
      stored_ += 0.5 * limit * point.slip * point.slip / length;
      point.position = here.position[0];
    }
  }
}

double Contact::settle(const Vector &x)
{
  if (settings_.friction == 0)
    return 0;
  double change = 0, total = 0;
  for (auto &point : points_)
  {
    const double pressure = penalty_response(settings_, -gap(point, x).distance.distance).pressure;
    change += point.area * std::abs(pressure - point.pressure);
    total += point.area * pressure;
    point.pressure = pressure;
  }
  return total > 0 ? change / total : 0.0;
}

ContactState Contact::state(const Vector &x) const
{
  const bool round = mesh_->section() == MeshSection::axisymmetric;
  const auto area_within = [&](double radius) {
    return round ? std::numbers::pi * radius * radius : 2 * radius;
  };
  struct Load
  {
    double within, area,
      force; ///< level area inside of the point's radius, of the point, and on it, all current
  };
  std::vector<Load> loads;
  ContactState      state;
  for (const auto &point : points_)
  {
    const auto here = gap(point, x);
    const auto response = penalty_response(settings_, -here.distance.distance);
    if (point.stuck)
      state.force += settings_.stick * point.area * stick_slip(point, here.position, x) * point.along[1];
    if (response.pressure == 0)
      continue;
    const double lift = response.pressure * point.area * here.distance.normal[1];
    state.force -= lift;
    state.radius = std::max(state.radius, here.position[0]);
    state.deepest = std::max(state.deepest, -here.distance.distance);
    const double spread = reach(point, x) * (round ? here.position[0] / point.at_rest[0] : 1.0);
    loads.push_back({area_within(here.position[0]), point.area * spread, std::abs(lift)});
  }
  // Pressure at the rim of a flat striker has no limit on refinement; the mean over a ring of fixed width
  // has. Each point's force is spread over its area, so that a ring may cut through it: whole points would
  // count too much.
  const auto force_within = [&](double area) {
    double force = 0;
    for (const auto &load : loads)
      if (load.area > 0)
        force += load.force * std::clamp((area - load.within) / load.area + 0.5, 0.0, 1.0);
    return force;
  };
  const double width = settings_.pressure_window;
  for (const auto &load : loads)
  {
    const double rim = load.within + 0.5 * load.area;
    const double radius = std::max(width, round ? std::sqrt(rim / std::numbers::pi) : 0.5 * rim);
    const double outside = area_within(radius), inside = area_within(radius - width);
    const double force = force_within(outside) - (inside > 0 ? force_within(inside) : 0.0);
    state.peak_pressure = std::max(state.peak_pressure, force / (outside - inside));
  }
  return state;
}

void Contact::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({name_, "contact", EnergyKind::stored, stored_});
  if (settings_.friction > 0 || settings_.stick > 0)
    entries.push_back({name_, "friction", EnergyKind::dissipated, lost_});
}
} // namespace solemech::solver
