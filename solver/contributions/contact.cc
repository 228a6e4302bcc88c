// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/contact.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

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
/// A stiffness xx, zz, xz of the body, as it lies now: R K R^T.
std::array<double, 3> turned(const RigidMotion &body, const std::array<double, 3> &k)
{
  const Point x = body.turned(Point{k[0], k[2]}), z = body.turned(Point{k[2], k[1]});
  const Point upper = body.turned(Point{x[0], z[0]}), lower = body.turned(Point{x[1], z[1]});
  return {upper[0], lower[1], upper[1]};
}

Point product(const std::array<double, 3> &k, const Point &v)
{
  return {k[0] * v[0] + k[2] * v[1], k[2] * v[0] + k[1] * v[1]};
}

double dot(const Point &a, const Point &b)
{
  return a[0] * b[0] + a[1] * b[1];
}
} // namespace

Contact::Contact(std::string name, const Discretisation &mesh,
                 const std::vector<geometry::BoundaryFace> &faces, geometry::RigidSurface surface,
                 ContactSettings settings, RigidBody body, double height, bool faces_up)
  : name_(std::move(name)), surface_(std::move(surface)), settings_(settings), body_(std::move(body)),
    height_(height), facing_(faces_up ? -1.0 : 1.0), mesh_(&mesh)
{
  if (mesh.section() != MeshSection::whole_plane &&
      std::any_of(body_.freedoms.begin(), body_.freedoms.end(),
                  [](Freedom f) { return f != Freedom::along_z; }))
    throw std::invalid_argument("a body that slides or tilts has no symmetric section");
  for (const SurfacePoint &on_face : surface_points(mesh, faces))
  {
    ContactPoint point{on_face};
    point.position = on_face.at_rest[0];
    points_.push_back(point);
  }
}

void Contact::stand_on(RigidBody support)
{
  if (std::any_of(support.freedoms.begin(), support.freedoms.end(), is_turn))
    throw std::invalid_argument("the support of a stack does not turn");
  support_ = std::move(support);
}

/// The support before the body: second derivatives want ways before turns. It carries the points, so it moves
/// the body against them the other way.
struct Contact::Movers
{
  Movers(const Contact &contact, const Vector &x)
    : body(contact.body_.motion(x)), support(contact.support_.motion(x)), of_body(contact.body_),
      of_support(contact.support_), n_support(of_support.freedoms.size()),
      n(n_support + of_body.freedoms.size())
  {
  }

  RigidMotion      body, support;
  const RigidBody &of_body, &of_support;
  std::size_t      n_support, n;

  int unknown(std::size_t k) const
  {
    return k < n_support ? of_support.unknown(k) : of_body.unknown(k - n_support);
  }
  Point rate(std::size_t k, const Point &place) const
  {
    if (k >= n_support)
      return body.rate(k - n_support, place);
    const Point way = support.rate(k, place);
    return {-way[0], -way[1]};
  }
  Point spin(std::size_t k, const Point &direction) const
  {
    return k >= n_support ? body.spin(k - n_support, direction) : Point{};
  }
};

double Contact::distance(const Point &place, const Vector &x) const
{
  const Movers movers(*this, x);
  const Point  home = movers.body.home(movers.support.position(place));
  return surface_distance(surface_, home[0], facing_ * (home[1] - height_)).distance;
}

Contact::Gap Contact::gap(const ContactPoint &point, const Movers &movers, const Vector &x) const
{
  Gap gap;
  gap.position = position(point, x);
  gap.home = movers.body.home(movers.support.position(gap.position));
  gap.home[1] -= height_;
  gap.distance = surface_distance(surface_, gap.home[0], facing_ * gap.home[1]);
  gap.distance.normal[1] *= facing_;
  gap.distance.curvature[2] *= facing_;
  return gap;
}

Contact::Response Contact::respond(const ContactPoint &point, const Gap &here) const
{
  const auto penalty = penalty_response(settings_, -here.distance.distance);
  const bool rubs = settings_.friction > 0 && point.pressure > 0;
  Response   response;
  response.acts = penalty.pressure > 0 || rubs || point.stuck;
  if (!response.acts)
    return response;
  const auto  &n = here.distance.normal;
  const auto  &h = here.distance.curvature;
  const double pull = -penalty.pressure * point.area; // d energy / d distance
  double       lateral = 0, lateral_stiffness = 0;
  if (rubs)
  {
    // Slip along a level surface; Huber's potential of the slip, with the pressure of the pass before.
    const double limit = settings_.friction * point.pressure * point.area;
    const double trial = point.slip + here.home[0] - point.position,
                 stiffness = limit / settings_.slip_length;
    const bool sticks = std::abs(trial) <= settings_.slip_length;
    lateral = sticks ? stiffness * trial : std::copysign(limit, trial);
    lateral_stiffness = sticks ? stiffness : 0.0;
  }
  response.push = {pull * n[0] + lateral, pull * n[1]};
  const double hold = point.stuck ? settings_.stick * point.area : 0.0;
  const auto  &t = point.along;
  if (point.stuck)
  {
    const double slip = stick_slip(point, here);
    for (unsigned c = 0; c < 2; ++c)
      response.push[c] += hold * slip * t[c];
  }
  const double stiff = penalty.stiffness * point.area;
  response.stiffness = {stiff * n[0] * n[0] + pull * h[0] + lateral_stiffness + hold * t[0] * t[0],
                        stiff * n[1] * n[1] + pull * h[1] + hold * t[1] * t[1],
                        stiff * n[0] * n[1] + pull * h[2] + hold * t[0] * t[1]};
  return response;
}

bool Contact::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  const Movers movers(*this, x);
  for (const auto &point : points_)
  {
    const auto here = gap(point, movers, x);
    auto       response = respond(point, here);
    if (!response.acts)
      continue;
    response.push = movers.body.turned(response.push);
    const Point place = movers.support.position(here.position);
    for (unsigned i = 0; i < 6; ++i)
      if (const int dof = point.dof[i]; dof >= 0)
        force[dof] += point.shape[i / 2] * response.push[i % 2];
    for (std::size_t k = 0; k < movers.n; ++k)
      force[movers.unknown(k)] -= dot(response.push, movers.rate(k, place));
    if (!tangent)
      continue;
    response.stiffness = turned(movers.body, response.stiffness);
    add_tangent(point, place, response, movers, *tangent);
  }
  return true;
}

/// With energy E(p), push f and stiffness K by the position p, rates P and spins W of the freedoms:
/// d2E/dp dq_k = W_k f - K P_k and d2E/dq_k dq_l = P_k K P_l + f W_l P_k for k <= l.
void Contact::add_tangent(const ContactPoint &point, const Point &place, const Response &response,
                          const Movers &movers, Tangent &tangent) const
{
  const auto  &k = response.stiffness;
  const double matrix[2][2] = {{k[0], k[2]}, {k[2], k[1]}};
  for (unsigned a = 0; a < 6; ++a)
    for (unsigned b = 0; b < 6; ++b)
      if (point.dof[a] >= 0 && point.dof[b] >= 0 && point.dof[a] >= point.dof[b])
        mesh_->add_entry(tangent.values, point.dof[a], point.dof[b],
                         point.shape[a / 2] * point.shape[b / 2] * matrix[a % 2][b % 2]);
  const int n = mesh_->n_unknowns();
  for (std::size_t one = 0; one < movers.n; ++one)
  {
    const int   column = movers.unknown(one) - n;
    const Point rate = movers.rate(one, place), spun = movers.spin(one, response.push);
    const Point pulled = product(k, rate);
    for (unsigned a = 0; a < 6; ++a)
      if (point.dof[a] >= 0)
        tangent.coupling(point.dof[a], column) += point.shape[a / 2] * (spun[a % 2] - pulled[a % 2]);
    for (std::size_t other = one; other < movers.n; ++other)
    {
      const double entry =
        dot(pulled, movers.rate(other, place)) + dot(response.push, movers.spin(other, rate));
      const int row = movers.unknown(other) - n;
      tangent.bodies(row, column) += entry;
      if (row != column)
        tangent.bodies(column, row) += entry;
    }
  }
}

double Contact::stick_slip(const ContactPoint &point, const Gap &here)
{
  return (here.home[0] - point.touched[0]) * point.along[0] +
         (here.home[1] - point.touched[1]) * point.along[1];
}

void Contact::begin_step(const Vector &, double)
{
  for (auto &point : points_)
    point.pressure = point.accepted_pressure;
}

void Contact::accept(const Vector &x, double)
{
  const Movers movers(*this, x);
  stored_ = 0;
  for (auto &point : points_)
  {
    const auto here = gap(point, movers, x);
    stored_ += point.area * penalty_response(settings_, -here.distance.distance).energy;
    if (settings_.stick > 0)
    {
      const bool touches = here.distance.distance < 0;
      if (point.stuck) // what leaves now has held up to here; what it held is lost
        (touches ? stored_ : lost_) +=
          0.5 * settings_.stick * point.area * std::pow(stick_slip(point, here), 2);
      else if (touches)
      {
        point.touched = here.home;
        point.along = {-here.distance.normal[1], here.distance.normal[0]};
      }
      point.stuck = touches;
    }
    if (settings_.friction > 0)
    {
      const double limit = settings_.friction * point.pressure * point.area;
      const double trial = point.slip + here.home[0] - point.position, length = settings_.slip_length;
      const double excess = std::max(0.0, std::abs(trial) - length);
      lost_ += limit * excess;
      point.slip = std::clamp(trial, -length, length);
      stored_ += 0.5 * limit * point.slip * point.slip / length;
      point.position = here.home[0];
      point.accepted_pressure = point.pressure;
    }
  }
}

double Contact::settle(const Vector &x)
{
  if (settings_.friction == 0)
    return 0;
  const Movers movers(*this, x);
  double       change = 0, total = 0;
  for (auto &point : points_)
  {
    const double pressure = penalty_response(settings_, -gap(point, movers, x).distance.distance).pressure;
    change += point.area * std::abs(pressure - point.pressure);
    total += point.area * pressure;
    point.pressure = pressure;
  }
  return total > 0 ? change / total : 0.0;
}

ContactState Contact::state(const Vector &x) const
{
  const Movers movers(*this, x);
  const bool   round = mesh_->section() == MeshSection::axisymmetric;
  const bool   whole = mesh_->section() == MeshSection::whole_plane;
  const auto   area_within = [&](double radius) {
    return round ? std::numbers::pi * radius * radius : whole ? radius : 2 * radius;
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
    const auto here = gap(point, movers, x);
    state.force += movers.body.turned(respond(point, here).push)[1];
    const auto pressure = penalty_response(settings_, -here.distance.distance).pressure;
    if (pressure == 0)
      continue;
    const double radius = here.home[0];
    state.radius = std::max(state.radius, std::abs(radius));
    state.deepest = std::max(state.deepest, -here.distance.distance);
    const double spread = reach(point, x) * (round ? radius / point.at_rest[0] : 1.0);
    loads.push_back(
      {area_within(radius), point.area * spread, pressure * point.area * std::abs(here.distance.normal[1])});
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
    const double radius =
      whole ? rim : std::max(width, round ? std::sqrt(rim / std::numbers::pi) : 0.5 * rim);
    const double outside = area_within(radius), inside = area_within(radius - width);
    const double force = force_within(outside) - (whole || inside > 0 ? force_within(inside) : 0.0);
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
