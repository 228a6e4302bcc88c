// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/rigid_contact.h"

#include <algorithm>
#include <cmath>
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

template <std::size_t dim>
Eigen::Map<const Eigen::Matrix<double, dim, 1>> vector(const std::array<double, dim> &at)
{
  return Eigen::Map<const Eigen::Matrix<double, dim, 1>>(at.data());
}

template <int dim>
std::array<double, dim> array(const Eigen::Matrix<double, dim, 1> &v)
{
  std::array<double, dim> out;
  std::copy_n(v.data(), dim, out.begin());
  return out;
}

template <int dim>
Eigen::Matrix<double, dim, 1> turned(const RigidMotion &body, const Eigen::Matrix<double, dim, 1> &direction)
{
  return vector(body.turned(array<dim>(direction)));
}

/// A stiffness of the body, as it lies now: R K R^T.
template <int dim>
Eigen::Matrix<double, dim, dim> turned(const RigidMotion &body, const Eigen::Matrix<double, dim, dim> &k)
{
  Eigen::Matrix<double, dim, dim> half, out;
  for (int i = 0; i < dim; ++i)
    half.col(i) = turned<dim>(body, k.col(i).eval());
  for (int i = 0; i < dim; ++i)
    out.row(i) = turned<dim>(body, half.row(i).transpose().eval()).transpose();
  return out;
}

geometry::SurfaceDistance distance_at(const geometry::RigidSurface &surface, const std::array<double, 2> &at)
{
  return surface_distance(surface, at[0], at[1]);
}

geometry::SpaceDistance distance_at(const geometry::SweptSurface &surface, const std::array<double, 3> &at)
{
  return surface_distance(surface, at);
}

Eigen::Matrix2d curvature_of(const geometry::SurfaceDistance &distance)
{
  const auto &h = distance.curvature;
  return Eigen::Matrix2d{{h[0], h[2]}, {h[2], h[1]}};
}

Eigen::Matrix3d curvature_of(const geometry::SpaceDistance &distance)
{
  return Eigen::Map<const Eigen::Matrix3d>(distance.curvature[0].data());
}
} // namespace

template <int dim>
RigidContact<dim>::RigidContact(std::string name, const Numbering &numbering,
                                const std::vector<SurfacePointOf<dim>> &points, Surface surface,
                                ContactSettings settings, RigidBody body, const At &lowest, bool faces_up)
  : name_(std::move(name)), surface_(std::move(surface)), settings_(settings), body_(std::move(body)),
    lowest_(lowest), facing_(faces_up ? -1.0 : 1.0), numbering_(&numbering)
{
  points_.reserve(points.size());
  for (const auto &on_face : points)
    points_.emplace_back(on_face, (vector(on_face.at_rest) - vector(lowest_)).template head<dim - 1>());
}

template <int dim>
void RigidContact<dim>::stand_on(RigidBody support)
{
  if (std::any_of(support.freedoms.begin(), support.freedoms.end(), is_turn))
    throw std::invalid_argument("the support of a stack does not turn");
  support_ = std::move(support);
}

/// The support before the body: second derivatives want ways before turns. It carries the points, so it moves
/// the body against them the other way.
template <int dim>
struct RigidContact<dim>::Movers
{
  Movers(const RigidContact &contact, const Vector &x)
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
  Direction rate(std::size_t k, const At &place) const
  {
    if (k >= n_support)
      return vector(body.rate(k - n_support, place));
    return -vector(support.rate(k, place));
  }
  Direction spin(std::size_t k, const Direction &direction) const
  {
    return k >= n_support ? Direction(vector(body.spin(k - n_support, array<dim>(direction))))
                          : Direction(Direction::Zero());
  }
};

template <int dim>
double RigidContact<dim>::distance(const At &place, const Vector &x) const
{
  const Movers movers(*this, x);
  At           home = movers.body.home(movers.support.position(place));
  for (unsigned c = 0; c < dim; ++c)
    home[c] -= lowest_[c];
  home[dim - 1] *= facing_;
  return distance_at(surface_, home).distance;
}

template <int dim>
typename RigidContact<dim>::At RigidContact<dim>::place_on_body(const At &home, const Vector &x) const
{
  return Movers(*this, x).body.position(array<dim>(vector(home) + vector(lowest_)));
}

template <int dim>
typename RigidContact<dim>::Gap RigidContact<dim>::gap(const Point &point, const Movers &movers,
                                                       const Vector &x) const
{
  Gap gap;
  gap.position = position(point, x);
  gap.home = vector(movers.body.home(movers.support.position(gap.position))) - vector(lowest_);
  At own = array<dim>(gap.home); // of the surface
  own[dim - 1] *= facing_;
  const auto found = distance_at(surface_, own);
  gap.distance = found.distance;
  gap.normal = vector(found.normal);
  gap.curvature = curvature_of(found);
  gap.normal[dim - 1] *= facing_;
  gap.curvature.row(dim - 1) *= facing_;
  gap.curvature.col(dim - 1) *= facing_;
  return gap;
}

template <int dim>
typename RigidContact<dim>::Response RigidContact<dim>::respond(const Point &point, const Gap &here) const
{
  const auto penalty = penalty_response(settings_, -here.distance);
  const bool rubs = settings_.friction > 0 && point.pressure > 0;
  Response   response;
  response.acts = penalty.pressure > 0 || rubs || point.stuck;
  if (!response.acts)
    return response;
  const auto  &n = here.normal;
  const double pull = -penalty.pressure * point.area; // d energy / d distance
  response.push = pull * n;
  response.stiffness = penalty.stiffness * point.area * n * n.transpose() + pull * here.curvature;
  if (rubs)
    add_friction(point, here, response);
  if (point.stuck)
  {
    const double hold = settings_.stick * point.area;
    response.push += hold * stick_slip(point, here);
    response.stiffness += hold * (Square::Identity() - point.normal * point.normal.transpose());
  }
  return response;
}

/// Slip along a level surface; Huber's potential of the slip, with the pressure of the pass before.
template <int dim>
void RigidContact<dim>::add_friction(const Point &point, const Gap &here, Response &response) const
{
  const double limit = settings_.friction * point.pressure * point.area;
  const Level  trial = trial_slip(point, here);
  const double way = trial.norm();
  auto         push = response.push.template head<dim - 1>();
  auto         stiffness = response.stiffness.template topLeftCorner<dim - 1, dim - 1>();
  if (way <= settings_.slip_length)
  {
    push += limit / settings_.slip_length * trial;
    stiffness.diagonal().array() += limit / settings_.slip_length;
    return;
  }
  const Level along = trial / way;
  push += limit * along;
  if constexpr (dim > 2) // in a section slip goes on the way it went
  {
    stiffness.diagonal().array() += limit / way;
    stiffness -= limit / way * along * along.transpose();
  }
}

template <int dim>
bool RigidContact<dim>::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  constexpr unsigned n_of_face = SurfacePointOf<dim>::n_of_face;
  const Movers       movers(*this, x);
  FaceMatrix         face;
  bool               face_touches = false;
  for (std::size_t i = 0; i < points_.size(); ++i)
  {
    if (i % n_of_face == 0)
      face_touches = false;
    const auto &point = points_[i];
    const auto  here = gap(point, movers, x);
    auto        response = respond(point, here);
    if (response.acts)
    {
      response.push = turned<dim>(movers.body, response.push);
      const At place = movers.support.position(here.position);
      for (unsigned k = 0; k < point.n_dofs; ++k)
        if (const int dof = point.dof[k]; dof >= 0)
          force[dof] += point.shape[k / dim] * response.push[k % dim];
      for (std::size_t k = 0; k < movers.n; ++k)
        force[movers.unknown(k)] -= response.push.dot(movers.rate(k, place));
      if (tangent)
      {
        if (!face_touches)
          face.setZero(), face_touches = true;
        response.stiffness = turned<dim>(movers.body, response.stiffness);
        add_tangent(point, place, response, movers, face, *tangent);
      }
    }
    if (face_touches && i % n_of_face == n_of_face - 1)
      add_face(point, face, *tangent);
  }
  return true;
}

/// With energy E(p), push f and stiffness K by the position p, rates P and spins W of the freedoms:
/// d2E/dp dq_k = W_k f - K P_k and d2E/dq_k dq_l = P_k K P_l + f W_l P_k for k <= l.
template <int dim>
void RigidContact<dim>::add_tangent(const Point &point, const At &place, const Response &response,
                                    const Movers &movers, FaceMatrix &face, Tangent &tangent) const
{
  for (unsigned a = 0; a < point.n_nodes; ++a)
    for (unsigned b = 0; b < point.n_nodes; ++b)
      face.template block<dim, dim>(dim * a, dim * b) += point.shape[a] * point.shape[b] * response.stiffness;
  const int n = numbering_->n_unknowns();
  for (std::size_t one = 0; one < movers.n; ++one)
  {
    const int       column = movers.unknown(one) - n;
    const Direction rate = movers.rate(one, place), spun = movers.spin(one, response.push);
    const Direction pulled = response.stiffness * rate;
    for (unsigned k = 0; k < point.n_dofs; ++k)
      if (point.dof[k] >= 0)
        tangent.coupling(point.dof[k], column) += point.shape[k / dim] * (spun[k % dim] - pulled[k % dim]);
    for (std::size_t other = one; other < movers.n; ++other)
    {
      const double entry =
        pulled.dot(movers.rate(other, place)) + response.push.dot(movers.spin(other, rate));
      const int row = movers.unknown(other) - n;
      tangent.bodies(row, column) += entry;
      if (row != column)
        tangent.bodies(column, row) += entry;
    }
  }
}

/// @param point  any of the face
template <int dim>
void RigidContact<dim>::add_face(const Point &point, const FaceMatrix &face, Tangent &tangent) const
{
  for (unsigned a = 0; a < point.n_dofs; ++a)
    for (unsigned b = 0; b < point.n_dofs; ++b)
      if (point.dof[b] >= 0 && point.dof[a] >= point.dof[b])
        numbering_->add_entry(tangent.values, point.dof[a], point.dof[b], face(a, b));
}

template <int dim>
typename RigidContact<dim>::Direction RigidContact<dim>::stick_slip(const Point &point, const Gap &here)
{
  const Direction way = here.home - point.touched;
  return way - way.dot(point.normal) * point.normal;
}

template <int dim>
typename RigidContact<dim>::Level RigidContact<dim>::trial_slip(const Point &point, const Gap &here)
{
  return point.slip + here.home.template head<dim - 1>() - point.position;
}

template <int dim>
void RigidContact<dim>::begin_step(const Vector &, double)
{
  for (auto &point : points_)
    point.pressure = point.accepted_pressure;
}

template <int dim>
void RigidContact<dim>::accept(const Vector &x, double)
{
  const Movers movers(*this, x);
  stored_ = 0;
  for (auto &point : points_)
  {
    const auto here = gap(point, movers, x);
    stored_ += point.area * penalty_response(settings_, -here.distance).energy;
    if (settings_.stick > 0)
    {
      const bool touches = here.distance < 0;
      if (point.stuck) // what leaves now has held up to here; what it held is lost
        (touches ? stored_ : lost_) +=
          0.5 * settings_.stick * point.area * stick_slip(point, here).squaredNorm();
      else if (touches)
        point.touched = here.home, point.normal = here.normal;
      point.stuck = touches;
    }
    if (settings_.friction > 0)
    {
      const double limit = settings_.friction * point.pressure * point.area, length = settings_.slip_length;
      const Level  trial = trial_slip(point, here);
      const double way = trial.norm();
      lost_ += limit * std::max(0.0, way - length);
      point.slip = way > length ? Level(length / way * trial) : trial;
      stored_ += 0.5 * limit * point.slip.squaredNorm() / length;
      point.position = here.home.template head<dim - 1>();
      point.accepted_pressure = point.pressure;
    }
  }
}

template <int dim>
double RigidContact<dim>::settle(const Vector &x)
{
  if (settings_.friction == 0)
    return 0;
  const Movers movers(*this, x);
  double       change = 0, total = 0;
  for (auto &point : points_)
  {
    const double pressure = penalty_response(settings_, -gap(point, movers, x).distance).pressure;
    change += point.area * std::abs(pressure - point.pressure);
    total += point.area * pressure;
    point.pressure = pressure;
  }
  return total > 0 ? change / total : 0.0;
}

template <int dim>
std::vector<typename RigidContact<dim>::Touch> RigidContact<dim>::touches(const Vector &x) const
{
  const Movers       movers(*this, x);
  std::vector<Touch> all;
  for (const auto &point : points_)
  {
    const auto here = gap(point, movers, x);
    const auto response = respond(point, here);
    if (!response.acts)
      continue;
    all.push_back({&point, movers.support.position(here.position), array<dim>(here.home),
                   array<dim>(here.normal), array<dim>(turned<dim>(movers.body, response.push)),
                   penalty_response(settings_, -here.distance).pressure, -here.distance});
  }
  return all;
}

template <int dim>
void RigidContact<dim>::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({name_, "contact", EnergyKind::stored, stored_});
  if (settings_.friction > 0 || settings_.stick > 0)
    entries.push_back({name_, "friction", EnergyKind::dissipated, lost_});
}

template class RigidContact<2>;
template class RigidContact<3>;
} // namespace solemech::solver
