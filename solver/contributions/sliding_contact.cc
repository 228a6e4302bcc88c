// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/sliding_contact.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::solver
{
SlidingContact::SlidingContact(std::string name, const Discretisation &mesh,
                               const std::vector<geometry::BoundaryFace> &faces, double penalty,
                               double slip_length, int body, double height)
  : name_(std::move(name)), mesh_(&mesh), penalty_(penalty), slip_length_(slip_length), height_(height),
    body_(body), law_([](double) { return ShearLimit{}; })
{
  for (const SurfacePoint &on_face : surface_points(mesh, faces))
  {
    Surface point{on_face};
    point.position = on_face.at_rest[0];
    points_.push_back(point);
  }
  in_order_.resize(points_.size());
  std::iota(in_order_.begin(), in_order_.end(), std::size_t{0});
  std::stable_sort(in_order_.begin(), in_order_.end(), [this](std::size_t a, std::size_t b) {
    return points_[a].at_rest[0] < points_[b].at_rest[0];
  });
}

double contact_overhang(const SlidingPointState &touching, const SlidingPointState &off)
{
  const double depth = -touching.gap, gap = off.gap;
  const double apart = std::hypot(off.at_rest[0] - touching.at_rest[0], off.at_rest[1] - touching.at_rest[1]);
  return depth / (depth + gap) * apart - 0.5 * touching.length;
}

void SlidingContact::clear_wear()
{
  for (auto &point : points_)
    point.slid = point.work = point.pressure_slid = 0;
}

SlidingContact::Response SlidingContact::respond(const Surface &point, const Vector &x) const
{
  Response r{};
  r.position = solver::position(point, x);
  r.depth = r.position[1] - (height_ + x[mesh_->n_unknowns() + body_]);
  // Relative to the court; a point that did not touch starts without elastic slip.
  r.trial = point.slip + (r.position[0] - place_) - (point.position - accepted_place_);
  if (r.depth <= 0)
    return r;
  r.pressure = penalty_ * r.depth * r.depth;
  r.stiffness = 2 * penalty_ * r.depth;
  const ShearLimit limit = law_(r.pressure);
  const double     share = std::clamp(r.trial / slip_length_, -1.0, 1.0);
  r.limit = limit.stress;
  r.shear = limit.stress * share; // resists the motion of the lug over the court
  r.shear_stiffness = std::abs(r.trial) < slip_length_ ? limit.stress / slip_length_ : 0.0;
  r.shear_per_pressure = limit.slope * share;
  return r;
}

bool SlidingContact::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  const int court = mesh_->n_unknowns() + body_;
  for (const auto &point : points_)
  {
    const auto r = respond(point, x);
    if (r.depth <= 0)
      continue;
    const double push[2] = {r.shear * point.area, r.pressure * point.area};
    for (unsigned i = 0; i < 6; ++i)
      if (point.dof[i] >= 0)
        force[point.dof[i]] += point.shape[i / 2] * push[i % 2];
    force[court] -= push[1];
    if (!tangent)
      continue;
    const double k[2] = {r.shear_stiffness * point.area, r.stiffness * point.area};
    const double cross = r.shear_per_pressure * r.stiffness * point.area; // d shear / d depth
    for (unsigned i = 0; i < 6; ++i)
    {
      if (point.dof[i] < 0)
        continue;
      for (unsigned j = i % 2; j < 6; j += 2)
        if (point.dof[j] >= 0 && point.dof[i] >= point.dof[j])
          mesh_->add_entry(tangent->values, point.dof[i], point.dof[j],
                           point.shape[i / 2] * point.shape[j / 2] * k[i % 2]);
      if (i % 2 == 1)
        tangent->coupling(point.dof[i], body_) -= point.shape[i / 2] * k[1];
      else if (cross != 0)
      {
        for (unsigned j = 1; j < 6; j += 2)
          if (point.dof[j] >= 0)
            tangent->unsymmetric.emplace_back(point.dof[i], point.dof[j],
                                              point.shape[i / 2] * point.shape[j / 2] * cross);
        tangent->unsymmetric.emplace_back(point.dof[i], court, -point.shape[i / 2] * cross);
      }
    }
    tangent->bodies(body_, body_) += k[1];
  }
  return true;
}

void SlidingContact::accept(const Vector &x, double)
{
  double shear_force = 0;
  stored_ = 0;
  for (auto &point : points_)
  {
    const auto r = respond(point, x);
    if (r.depth > 0)
    {
      const double excess = std::max(0.0, std::abs(r.trial) - slip_length_);
      const double work = r.limit * excess;
      lost_ += work * point.area;
      point.slid += excess;
      point.work += work;
      point.pressure_slid += r.pressure * excess;
      point.slip = std::clamp(r.trial, -slip_length_, slip_length_);
      stored_ += point.area * (penalty_ * r.depth * r.depth * r.depth / 3 + 0.5 * r.shear * point.slip);
    }
    else
      point.slip = 0;
    point.position = r.position[0];
    shear_force += r.shear * point.area;
  }
  driven_ += 0.5 * (shear_force + shear_force_) * (place_ - accepted_place_);
  shear_force_ = shear_force;
  accepted_place_ = place_;
}

void SlidingContact::energies(std::vector<EnergyEntry> &entries) const
{
  entries.push_back({name_, "contact", EnergyKind::stored, stored_});
  entries.push_back({name_, "friction", EnergyKind::dissipated, lost_});
  entries.push_back({name_, "drive", EnergyKind::exchanged, driven_});
}

SlidingState SlidingContact::state(const Vector &x) const
{
  SlidingState state;
  for (const auto &point : points_)
  {
    const auto r = respond(point, x);
    if (r.depth <= 0)
      continue;
    state.normal += r.pressure * point.area;
    state.shear -= r.shear * point.area;
    state.moment += r.pressure * point.area * r.position[0];
    state.contact_length += point.area * reach(point, x);
    state.deepest = std::max(state.deepest, r.depth);
  }
  // Whole points make the length jump by what one stands for; the ends of each stretch are put where the gap
  // is nought.
  const auto all = points(x);
  for (std::size_t i = 0; i + 1 < in_order_.size(); ++i)
  {
    const auto &left = all[in_order_[i]], &right = all[in_order_[i + 1]];
    const bool  left_touches = left.gap < 0;
    if (left_touches == (right.gap < 0))
      continue;
    const auto touching = left_touches ? in_order_[i] : in_order_[i + 1];
    state.contact_length +=
      reach(points_[touching], x) * contact_overhang(all[touching], left_touches ? right : left);
  }
  return state;
}

std::vector<SlidingPointState> SlidingContact::points(const Vector &x) const
{
  std::vector<SlidingPointState> states;
  for (const auto &point : points_)
  {
    const auto        r = respond(point, x);
    SlidingPointState s;
    s.at_rest = point.at_rest;
    s.position = r.position;
    s.length = point.area;
    Point along{};
    for (unsigned i = 0; i < 3; ++i)
      for (unsigned c = 0; c < 2; ++c)
        along[c] += point.slope[0][i] * point.node[i][c];
    s.face = std::hypot(along[0], along[1]);
    s.pressure = r.pressure;
    s.shear = -r.shear;
    s.gap = -r.depth;
    s.slid = point.slid, s.work = point.work, s.pressure_slid = point.pressure_slid;
    states.push_back(s);
  }
  return states;
}
} // namespace solemech::solver
